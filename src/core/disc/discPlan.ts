import type { CodeTable } from '../codes/index.ts';
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

/** Where everything on the disc goes. */
export interface DiscPlan {
  readonly code: CodeTable;
  readonly spec: DiscSpec;
  /** Tracks in the order of the code table. n = tracks of the code */
  readonly tracks: readonly TrackPlan[];
  /** Arcs of material added in windows to hold pieces that would fall out. */
  readonly ribs: readonly RingSector[];
}
