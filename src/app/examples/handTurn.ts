import { lightLevel, seenTrack, signalOf, type SeenTrack } from '../../core/head/index.ts';
import { degToRad, radToDeg, type Random } from '../../core/units/index.ts';
import type { Design } from '../design.ts';

/** What is invented of one build of a design. */
export interface InventedBuild {
  /** From the middle of the pattern to the middle of the bore. [mm] */
  readonly boreMm: readonly [number, number];
  /** Scatter of the sensors along their tracks, and of their parts. [mm], [-] */
  readonly alongSdMm: number;
  readonly partSd: number;
  /** Channel on each column: two exchanged wires, for example. */
  readonly columns: readonly number[];
  readonly noiseCounts: number;
}

/** How it is turned by hand. */
export interface InventedHand {
  /** Whole turns and parts of one; below 0 counter-clockwise seen from the face. [-] */
  readonly turns: number;
  readonly degPerS: number;
  readonly startDeg: number;
  readonly sampleMs: number;
}

/** Share by which a hand speeds up and slows down in a turn. [-] */
const UNEVEN = 0.3;

/** Disc angles at even moments: a hand that is never quite even. [deg] */
function handAngles({ turns, degPerS, startDeg, sampleMs }: InventedHand): number[] {
  const angles: number[] = [];
  const way = Math.sign(turns);
  for (let gone = 0, i = 0; gone <= Math.abs(turns) * 360; i++) {
    angles.push(startDeg + way * gone);
    const speed = degPerS * (1 + UNEVEN * Math.sin((i * sampleMs) / 1700));
    gone += (speed * sampleMs) / 1000;
  }
  return angles;
}

/** A track as one channel sees it, with the pattern's middle off the bore's. */
function offBore(seen: SeenTrack, [x, y]: readonly [number, number]): SeenTrack {
  const movesMm = seen.movesMm.map((move, i) => {
    const edge = degToRad(seen.edgesDeg[i]!);
    return move + y * Math.cos(edge) - x * Math.sin(edge);
  });
  return { ...seen, movesMm, widestMoveMm: Math.max(...movesMm.map(Math.abs)) };
}

/** Reckons the counts of every channel of one invented build at a disc angle. */
function countsOf({ disc, head, instrument }: Design, build: InventedBuild, random: Random) {
  const { detector, aperture } = head.spec;
  const signal = signalOf(detector, head.levels.resistorOhm, instrument.circuit.sensorTo, head.board);
  const channels = head.channels.map(({ track, angleDeg, radiusMm }) => ({
    seen: offBore(seenTrack(disc, track, aperture), build.boreMm),
    turnDeg: angleDeg + radToDeg((build.alongSdMm * random.normal()) / radiusMm),
    part: Math.exp(build.partSd * random.normal()),
  }));
  return (angle: number): number[] =>
    build.columns.map((channel) => {
      const { seen, turnDeg, part } = channels[channel]!;
      const counts = signal.counts(lightLevel(seen, angle + turnDeg), part, 1);
      const noisy = Math.floor(counts + build.noiseCounts * random.normal());
      return Math.min(signal.scaleCounts - 1, Math.max(0, noisy));
    });
}

/**
 * Recordings of one invented build, turned by an invented hand: columns as a maker's own sketch prints them.
 *
 * @param hands - One recording each.
 */
export function handTurns(
  design: Design,
  build: InventedBuild,
  hands: readonly InventedHand[],
  random: Random,
): string[] {
  const counts = countsOf(design, build, random);
  return hands.map((hand) => {
    const rows = handAngles(hand).map((angle, i) => [1000 + i * hand.sampleMs, ...counts(angle)].join(','));
    return `${['ms', ...build.columns.map((_, c) => `a${c}`)].join(',')}\n${rows.join('\n')}\n`;
  });
}
