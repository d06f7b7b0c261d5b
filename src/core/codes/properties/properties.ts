import type { Degrees } from '../../units/index.ts';
import { boundaries, halfTurned, type Boundary, type HalfTurned, type LevelOrder } from './boundaries.ts';
import type { CodeTable } from '../codeTable.ts';
import { runLengthsDeg } from '../track.ts';

/** How busy one track is. */
export interface TrackProperties {
  readonly track: number;
  /** Edges in one turn. [-] */
  readonly transitions: number;
  /** Shortest run of one level, window or land alike. [deg] */
  readonly shortestRunDeg: Degrees;
  /** The same in steps of the code; a fraction where edges lie inside a step. [steps] */
  readonly shortestRunSteps: number;
}

/** A boundary with what a disc stopped on it can show. */
export interface BoundaryProperties extends Boundary {
  readonly halfTurned: HalfTurned;
}

/** What is true of a code table, whatever disc it is put on. */
export interface CodeProperties {
  /** n = tracks of the code */
  readonly tracks: readonly TrackProperties[];
  /** Shortest run of all tracks. [deg] */
  readonly shortestRunDeg: Degrees;
  readonly shortestRunSteps: number;
  /** Every boundary of the turn, in order of disc angle. */
  readonly boundaries: readonly BoundaryProperties[];
  /** Exactly one channel changes at every boundary, the seam from the last position to the first included. */
  readonly singleStep: boolean;
  /** Boundaries at which more than one channel changes; empty where `singleStep`. */
  readonly multiStepBoundaries: readonly BoundaryProperties[];
  /** Worst decode error of any boundary, against the nearer true neighbour. [positions] */
  readonly worstErrorPositions: number;
  /** Words that the channels could show and the code does not have. [-] */
  readonly illegalWords: number;
  /** For each level: the word in which every channel reads it is illegal, so that a fault which does so is seen. */
  readonly uniformWordIllegal: readonly boolean[];
}

function trackProperties(table: CodeTable): TrackProperties[] {
  return table.tracks.map((track, index) => {
    const runs = runLengthsDeg(track);
    const shortestRunDeg = runs.reduce((a, b) => Math.min(a, b), 360);
    return {
      track: index,
      transitions: runs.length === 1 ? 0 : runs.length,
      shortestRunDeg,
      // Edges are kept in degrees; whole steps come back whole.
      shortestRunSteps: Math.round(((shortestRunDeg * table.positions) / 360) * 1e9) / 1e9,
    };
  });
}

/** Words the channels could show when they may be read: the product of their levels, the strobe's left out. [-] */
function possibleWords({ channels, tracks, strobe }: CodeTable): number {
  return channels
    .filter((_, c) => c !== strobe?.channel)
    .reduce((product, { track }) => product * tracks[track]!.levelCount, 1);
}

/**
 * What is true of a code table: how busy each track is, and what every boundary can be misread as.
 *
 * @param order - Whether a level between two others can show on the way; only three-level tracks care.
 * @check test/published/gray-code, test/published/binary-boundaries
 */
export function codeProperties(table: CodeTable, order: LevelOrder = 'unordered'): CodeProperties {
  const tracks = trackProperties(table);
  const all = boundaries(table).map((boundary) => ({
    ...boundary,
    halfTurned: halfTurned(table, boundary, order),
  }));
  const multiStepBoundaries = all.filter(({ changing }) => changing.length > 1);
  const levelCount = Math.max(...table.tracks.map((track) => track.levelCount));
  return {
    tracks,
    shortestRunDeg: Math.min(...tracks.map((track) => track.shortestRunDeg)),
    shortestRunSteps: Math.min(...tracks.map((track) => track.shortestRunSteps)),
    boundaries: all,
    singleStep: multiStepBoundaries.length === 0,
    multiStepBoundaries,
    worstErrorPositions: all.reduce((worst, b) => Math.max(worst, b.halfTurned.worstErrorPositions), 0),
    illegalWords: possibleWords(table) - new Set(table.words).size,
    uniformWordIllegal: Array.from({ length: levelCount }, (_, level) => {
      // A reader that would go on showing some position does not notice the fault.
      return table.nextPosition(String(level).repeat(table.channels.length), 0) === null;
    }),
  };
}

/**
 * Whether the two plainest faults show themselves: no light anywhere, and light everywhere.
 *
 * @param windowLevel - The level of the code that lets light through.
 */
export function lightFaultsSeen(
  properties: CodeProperties,
  windowLevel: 0 | 1,
): { readonly lampOff: boolean; readonly flooded: boolean } {
  const landLevel = windowLevel === 1 ? 0 : 1;
  return {
    lampOff: properties.uniformWordIllegal[landLevel]!,
    flooded: properties.uniformWordIllegal[windowLevel]!,
  };
}
