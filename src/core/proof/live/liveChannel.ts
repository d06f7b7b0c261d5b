import {
  lightLevel,
  markShares,
  type MarkReader,
  type SeenMarks,
  type SeenTrack,
  type Signal,
} from '../../head/index.ts';
import { followed } from '../turn/laggedSwitches.ts';

/** One channel of a build while it turns; what it says now is written over as it goes on. */
export interface LiveChannel {
  /** Light that its sensor has followed to, daylight and lamp included; over three marks the level so far, 0..1. [-] */
  light: number;
  /** What the converter reads: one value, or red, green and blue. [counts] */
  readonly counts: Float64Array;
  /** What it is read as: 0 or 1, or one of three levels. */
  level: number;
  /** Counts between which it keeps what it read, lower and upper in turn, of one pair or two; none for colours. [counts] */
  readonly thresholds: readonly number[];
  /** Goes on by so much time, the pattern under it now at an angle. [deg], [s] */
  goOn(angleDeg: number, seconds: number): void;
}

/** What the sensor of a channel follows with, and what has changed since its thresholds were measured. */
export interface LiveSensor {
  readonly signal: Signal;
  readonly riseS: number;
  readonly fallS: number;
  readonly part: number;
  readonly resistor: number;
  /** Factor on the lamp's light, and light beside it. [-] */
  readonly lamp: number;
  readonly addedLight: number;
}

/** A channel that tells light from dark. */
export function lightChannel(
  seen: SeenTrack,
  aheadDeg: number,
  sensor: LiveSensor,
  levels: { readonly lowCounts: number; readonly highCounts: number; readonly windowLevel: 0 | 1 },
): LiveChannel {
  const { signal, riseS, fallS, part, resistor, lamp, addedLight } = sensor;
  const { lowCounts, highCounts, windowLevel } = levels;
  const counts = new Float64Array(1);
  const isLagging = riseS > 0 || fallS > 0;
  const middle = (lowCounts + highCounts) / 2;
  let drive = Number.NaN;
  let isLit = false;
  return {
    light: 0,
    counts,
    level: 1 - windowLevel,
    thresholds: [lowCounts, highCounts],
    goOn(angleDeg, seconds) {
      const falls = Math.max(0, lamp * lightLevel(seen, angleDeg + aheadDeg) + addedLight);
      const isFirst = Number.isNaN(drive);
      const goal = signal.drive(falls);
      drive = isFirst ? goal : followed(drive, goal, goal > drive ? riseS : fallS, seconds);
      this.light = isLagging && !isFirst ? signal.lightOfDrive(drive) : falls;
      counts[0] = signal.counts(this.light, part, resistor);
      const bright = signal.litIsHigh ? counts[0] : -counts[0];
      if (bright >= (signal.litIsHigh ? highCounts : -lowCounts)) isLit = true;
      else if (bright <= (signal.litIsHigh ? lowCounts : -highCounts)) isLit = false;
      // Switched on between its thresholds, a channel takes the nearer.
      else if (isFirst) isLit = bright > (signal.litIsHigh ? middle : -middle);
      this.level = isLit ? windowLevel : 1 - windowLevel;
    },
  };
}

/** Numbers that stand for three marks at the converter: one each, or red, green and blue. [counts] */
export type MarkCounts = readonly (readonly number[])[];

/** A channel that tells three marks apart; it keeps its last level over what its reader rejects. */
export function markChannel(
  marks: SeenMarks,
  aheadDeg: number,
  reader: MarkReader,
  { tauS, markCounts, thresholds }: { tauS: number; markCounts: MarkCounts; thresholds: readonly number[] },
): LiveChannel {
  const counts = new Float64Array(markCounts[0]!.length);
  const shares = [Number.NaN, 0, 0];
  return {
    light: 0,
    counts,
    level: 0,
    thresholds,
    goOn(angleDeg, seconds) {
      const now = markShares(marks, angleDeg + aheadDeg);
      const isFirst = Number.isNaN(shares[0]!);
      for (let level = 0; level < 3; level++) {
        shares[level] = isFirst ? now[level]! : followed(shares[level]!, now[level]!, tauS, seconds);
      }
      this.light = (shares[1]! + 2 * shares[2]!) / 2;
      for (let i = 0; i < counts.length; i++) {
        counts[i] = markCounts.reduce((sum, mark, level) => sum + shares[level]! * mark[i]!, 0);
      }
      this.level = reader.judge(shares) ?? this.level;
    },
  };
}
