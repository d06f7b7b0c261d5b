import type { CodeTable } from '../codeTable.ts';
import type { CodeNeed } from './need.ts';

/** Where the tracks would lie: bands of equal width, track 0 innermost. */
export interface TrackBands {
  /** Middle of each track's band, in the order of the table. [mm] */
  readonly radiiMm: readonly number[];
  /** Width of every band; 0 or less where they do not fit at all. [mm] */
  readonly widthMm: number;
}

/**
 * Shares the room between two radii equally among the tracks.
 *
 * @check src/core/codes/ranking/rankCodes.test.ts
 */
export function layTracks({ tracks }: CodeTable, need: CodeNeed): TrackBands {
  const room = need.outerRadiusMm - need.innerRadiusMm - (tracks.length - 1) * need.webMm;
  const widthMm = room / tracks.length;
  const radiiMm = tracks.map((_, track) => need.innerRadiusMm + widthMm * (track + 0.5) + need.webMm * track);
  return { radiiMm, widthMm };
}
