import { wrapDegrees, type Degrees } from '../units/index.ts';
import type { Level, Track } from './model.ts';

/**
 * A track from the level of each of its equal cells.
 *
 * @param cells - Level of cell k, which covers [k, k+1) * 360/n degrees. n ≥ 1
 * @param levelCount - 2, or 3 for colours.
 */
export function trackFromCells(cells: readonly Level[], levelCount: 2 | 3 = 2): Track {
  const startsDeg: Degrees[] = [];
  const levels: Level[] = [];
  for (const [cell, level] of cells.entries()) {
    if (level === cells.at(cell - 1)) continue;
    startsDeg.push((cell * 360) / cells.length);
    levels.push(level);
  }
  // A track of one level has no edge; one run that begins at the index mark says so.
  return startsDeg.length > 0
    ? { levelCount, startsDeg, levels }
    : { levelCount, startsDeg: [0], levels: [cells[0]!] };
}

/** Index of the run that covers a disc angle. [index into the track's runs] */
export function runAt(track: Track, angle: Degrees): number {
  const at = wrapDegrees(angle);
  let low = 0;
  let high = track.startsDeg.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (track.startsDeg[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? track.startsDeg.length - 1 : low - 1;
}

/** Level of a track at a disc angle [deg], any finite value; a run owns its beginning, not its end. */
export function levelAt(track: Track, angle: Degrees): Level {
  return track.levels[runAt(track, angle)]!;
}

/** Length of each run. [deg], one per run, summing to 360 */
export function runLengthsDeg(track: Track): Degrees[] {
  const { startsDeg } = track;
  return startsDeg.map((start, i) =>
    startsDeg.length === 1 ? 360 : wrapDegrees((startsDeg[i + 1] ?? startsDeg[0]!) - start),
  );
}
