import type { CodeTable } from '../codes/index.ts';
import type { Degrees } from '../units/index.ts';
import type { DiscSpec, RingSector } from './discSpec.ts';

/** One track of the code, laid on the disc. */
export interface TrackPlan {
  /** Index of the track in the code table. */
  readonly track: number;
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  /** Where the channels look: middle of the band. [mm] */
  readonly midRadiusMm: number;
  /** Windows as drawn, clockwise in order. */
  readonly windows: readonly RingSector[];
}

/**
 * A strip, laid out: x along its length, 0 where disc angle 0 lies; y across, 0 at its lower edge.
 *
 * The tracks of its plan all have the radius of a drum that unrolls to one turn, so that lengths along a track are
 * right for whoever takes the plan for a disc's.
 */
export interface StripLayout {
  /** Length of strip for each degree. [mm/deg] */
  readonly mmPerDeg: number;
  /** Where the strip begins and ends, as disc angles; may lie below 0 and above 360. [deg] */
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
  readonly heightMm: number;
  /** Solid at either end, where no window is. [deg] */
  readonly capDeg: Degrees;
  /** Shortest window that is cut where the pattern ends; what is shorter stays closed. [deg] */
  readonly leastWindowDeg: Degrees;
  /** Lower and upper edge of each track. [mm], n = tracks of the code */
  readonly bands: readonly { readonly lowMm: number; readonly highMm: number }[];
}

/** Where everything on the disc goes. */
export interface DiscPlan {
  readonly code: CodeTable;
  readonly spec: DiscSpec;
  /** Tracks in the order of the code table. n = tracks of the code */
  readonly tracks: readonly TrackPlan[];
  /** Arcs of material added in windows to hold pieces that would fall out. */
  readonly ribs: readonly RingSector[];
  /** Where the tracks lie on a strip; a disc where left out. */
  readonly strip?: StripLayout;
}
