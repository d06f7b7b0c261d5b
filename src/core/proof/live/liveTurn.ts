import { signalOf, type HeadPlan } from '../../head/index.ts';
import { wrapDegrees } from '../../units/index.ts';
import { aheadDeg, builtMarks, builtTrack } from '../turn/builtTrack.ts';
import { faultyConditions, ownThresholds, type BuildFaults, type Conditions } from '../turn/conditions.ts';
import { turnModel, type TurnModel } from '../turn/turnModel.ts';
import { lightChannel, markChannel, type LiveChannel, type LiveSensor } from './liveChannel.ts';

/** What is wrong with a build that is turned before one's eyes. */
export interface LiveFaults extends BuildFaults {
  /** Factor on how slowly every sensor follows; 1 where left out, 0 for at once. [-] */
  readonly slowness?: number;
}

/** A build under a hand that turns it: what every channel sees, and what is read, written over as it goes on. */
export interface LiveTurn {
  readonly channels: readonly LiveChannel[];
  /** Disc angle under the head's reference line. [deg], [0, 360) */
  readonly angleDeg: number;
  /** What the channels show, channel 0 first. */
  readonly word: string;
  /** What a reader shows for it; `null` where the code does not have the word. */
  readonly position: number | null;
  /**
   * Turns it on, the disc angle growing where above 0, over so much time.
   *
   * @param byDeg - How far. [deg] @param elapsedMs - Over how long. [ms], ≥ 0
   */
  goOn(byDeg: number, elapsedMs: number): void;
}

/** Steps that a position's step is passed in, so that no word is skipped. [-] */
const LOOKS_A_STEP = 8;
/** Most looks in one call: a hand that tears the disc round is followed no finer. [-] */
const MOST_LOOKS = 4096;

/**
 * A build that is turned by hand, followed in time: the light on every channel, its sensor's lag, its counts and level.
 *
 * Turned slowly it changes where `exactTurn` says, within an eighth of a step; nothing is made anew while it turns,
 * save a word when it changes.
 *
 * @param head - The design.
 * @param faults - What is wrong with this build; nothing, unless stated.
 * @param startDeg - Disc angle at which it is switched on. [deg]
 * @throws `proof/too-many-channels`
 * @check src/core/proof/live/liveTurn.test.ts (switching angles of exactTurn, still and lagging)
 */
export function liveTurn(head: HeadPlan, faults: LiveFaults = {}, startDeg = 0): LiveTurn {
  const model = turnModel(head);
  const conditions = faultyConditions(model, faults);
  const channels = model.channels.map((_, c) => liveChannel(model, conditions, faults, c));
  const shown = shownBy(head, channels);
  let angleDeg = wrapDegrees(startDeg);
  const look = (seconds: number): void => {
    for (let c = 0; c < channels.length; c++) channels[c]!.goOn(angleDeg, seconds);
    shown.look(angleDeg);
  };
  look(0);
  return {
    channels,
    get angleDeg() {
      return angleDeg;
    },
    get word() {
      return shown.word;
    },
    get position() {
      return shown.position;
    },
    goOn(byDeg, elapsedMs) {
      const looks = Math.min(
        MOST_LOOKS,
        Math.max(1, Math.ceil((Math.abs(byDeg) * LOOKS_A_STEP) / model.stepDeg)),
      );
      for (let i = 0; i < looks; i++) {
        angleDeg = wrapDegrees(angleDeg + byDeg / looks);
        look(elapsedMs / looks / 1000);
      }
    },
  };
}

/** Word and position of the channels' levels; both are found again only when a level has changed. */
function shownBy({ disc: { code } }: HeadPlan, channels: readonly LiveChannel[]) {
  const levels = new Int8Array(channels.length).fill(-1);
  const shown = {
    word: '',
    position: null as number | null,
    look(angleDeg: number): void {
      let isOther = false;
      for (let c = 0; c < levels.length; c++) {
        if (levels[c] === channels[c]!.level) continue;
        levels[c] = channels[c]!.level;
        isOther = true;
      }
      if (!isOther) return;
      shown.word = levels.join('');
      last ??= handSet(angleDeg);
      shown.position = code.nextPosition(shown.word, last);
      last = shown.position ?? last;
    },
  };
  /** A wheel that only counts is set by hand to where it stands. */
  const handSet = (angleDeg: number): number | null =>
    code.absolute ? null : Math.floor((wrapDegrees(angleDeg) * code.positions) / 360) % code.positions;
  let last: number | null = null;
  return shown;
}

function liveChannel(model: TurnModel, conditions: Conditions, faults: LiveFaults, c: number): LiveChannel {
  const { head, channels } = model;
  const { detector } = head.spec;
  const { slowness = 1, drift = 1, addedLight = 0 } = faults;
  const along = (radiusMm: number): number =>
    aheadDeg(channels[c]!.angleDeg, conditions.alongMm[c]!, radiusMm);
  if (head.marks !== null && channels[c]!.marks) {
    const { marks } = head;
    const built = builtMarks(model, conditions, c);
    return markChannel(built, along(built.radiusMm), conditions.readers[c]!, {
      tauS: (slowness * Math.max(detector.riseMs, detector.fallMs)) / 1000,
      markCounts: marks.kind === 'greys' ? marks.counts.map((counts) => [counts]) : marks.marksRgbCounts,
      thresholds:
        marks.kind === 'greys'
          ? marks.thresholds.flatMap(({ lowCounts, highCounts }) => [lowCounts, highCounts])
          : [],
    });
  }
  const signal = signalOf(detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  const [part, resistor] = [faults.parts?.[c] ?? 1, faults.resistors?.[c] ?? 1];
  const { lowCounts, highCounts } = ownThresholds(head, signal, part, resistor);
  const off = faults.thresholdCounts?.[c] ?? 0;
  const built = builtTrack(model, conditions, c);
  const sensor: LiveSensor = {
    signal,
    riseS: (slowness * detector.riseMs) / 1000,
    fallS: (slowness * detector.fallMs) / 1000,
    part: part * drift,
    resistor,
    lamp: faults.lamps?.[c] ?? 1,
    addedLight,
  };
  return lightChannel(built, along(built.radiusMm), sensor, {
    lowCounts: lowCounts + off,
    highCounts: highCounts + off,
    windowLevel: head.disc.spec.windowLevel,
  });
}
