import { runLengthsDeg, type Level, type Track } from '../../codes/index.ts';
import type { Degrees } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';

/** A stretch of a track, clockwise from `fromDeg` to `toDeg`; `toDeg` may pass 360, and a whole turn spans 360. */
export interface Stretch {
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
}

/** True where a level of the code lets light through; the one place that joins levels and material. */
export function isWindow(level: Level, spec: Pick<DiscSpec, 'windowLevel'>): boolean {
  return level === spec.windowLevel;
}

/**
 * Stretches of a track whose level passes a test, neighbours joined, in order of where they begin.
 *
 * @param track - Track of the code.
 * @param wanted - The test, such as `isWindow`.
 * @returns Stretches; one that spans 360 when the whole track passes. [deg], n ≥ 0
 */
export function stretchesWhere(track: Track, wanted: (level: Level) => boolean): Stretch[] {
  const chosen = track.levels.map(wanted);
  const lengths = runLengthsDeg(track);
  if (chosen.every(Boolean)) return [{ fromDeg: track.startsDeg[0]!, toDeg: track.startsDeg[0]! + 360 }];
  const runs = chosen.length;
  const stretches: Stretch[] = [];
  for (let first = 0; first < runs; first++) {
    if (!chosen[first] || chosen[(first + runs - 1) % runs]) continue;
    let last = first;
    let span = 0;
    for (; chosen[last % runs]; last++) span += lengths[last % runs]!;
    const fromDeg = track.startsDeg[first]!;
    // The end is taken from the next run's own beginning, so that edges of equal angle stay bit-equal.
    const end = track.startsDeg[last % runs]!;
    stretches.push({ fromDeg, toDeg: span > 0 && end <= fromDeg ? end + 360 : end });
  }
  return stretches;
}
