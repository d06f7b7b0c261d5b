import type { Degrees } from '../units/index.ts';

/** Hole on the shaft. */
export type Bore =
  | { readonly shape: 'round'; readonly diameterMm: number }
  /** `acrossFlatMm` is measured from the flat to the far side of the hole. */
  | { readonly shape: 'd'; readonly diameterMm: number; readonly acrossFlatMm: number };

/** What the maker's process can do; defaults by kind, each replaced by the maker's own measurement. */
export interface Process {
  readonly kind: 'fdm' | 'laser' | 'film';
  /** Narrowest opening that comes out open. [mm] */
  readonly minWindowMm: number;
  /** Narrowest piece of material between openings along a track. [mm] */
  readonly minLandMm: number;
  /** Narrowest ring of material between two tracks. [mm] */
  readonly minWebMm: number;
  /** Standard deviation of where one edge really lies. [mm] */
  readonly edgeSdMm: number;
  /** How much wider every window comes out than drawn: a laser's kerf, or below 0 for a print. [mm] */
  readonly windowGrowthMm: number;
  /** Standard deviation of the bore's centre against the pattern, in each of two directions. [mm] */
  readonly boreSdMm: number;
}

/** The disc as the instrument file asks for it. */
export interface DiscSpec {
  readonly code: string;
  /** Diameter over the rim. [mm] */
  readonly diameterMm: number;
  readonly bore: Bore;
  /** Solid round the bore; the innermost track begins here. [mm] */
  readonly hubDiameterMm: number;
  readonly thicknessMm: number;
  /** Ring of material between two tracks; 0 for none. [mm] */
  readonly webMm: number;
  /** Ring of material outside the outermost track; 0 for none. [mm] */
  readonly rimMm: number;
  /** Where the track with the shortest marks lies. */
  readonly finest: 'outside' | 'inside';
  /** The level of the code that lets light through. */
  readonly windowLevel: 0 | 1;
  /** Index notch in the rim at disc angle 0; width 0 for none. [mm] */
  readonly notch: { readonly widthMm: number; readonly depthMm: number };
  readonly process: Process;
}

/** A piece of a ring, clockwise from `fromDeg` to `toDeg`; `toDeg` may pass 360, and a whole ring spans 360. */
export interface RingSector {
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
}
