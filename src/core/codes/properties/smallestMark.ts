import { degToRad } from '../../units/index.ts';
import type { CodeTable } from '../codeTable.ts';
import { runLengthsDeg } from '../track.ts';

/** The narrowest mark of a disc: what the tool that cuts or prints it must manage. */
export interface SmallestMark {
  readonly track: number;
  /** Along the middle of its track. [mm] */
  readonly arcMm: number;
}

/**
 * The narrowest window or land of all tracks, measured along each track's radius.
 *
 * @param radiiMm - Radius of each track, in the order of the table. [mm], n = tracks
 * @returns The first of the narrowest; a track without edges counts as its whole circumference.
 * @source arc = radius * angle.
 * @check src/core/codes/properties/smallestMark.test.ts
 */
export function smallestMark({ tracks }: CodeTable, radiiMm: readonly number[]): SmallestMark {
  const marks = tracks.map((track, index) => ({
    track: index,
    arcMm: radiiMm[index]! * degToRad(Math.min(...runLengthsDeg(track))),
  }));
  return marks.reduce((least, mark) => (mark.arcMm < least.arcMm - 1e-9 ? mark : least));
}
