import type { CodeOptions } from '../codes/index.ts';
import type { Degrees } from '../units/index.ts';
import type { CouponReadings } from './measured/couponReadings.ts';

/** Hole on the shaft. */
export type Bore =
  | { readonly shape: 'round'; readonly diameterMm: number }
  /** `acrossFlatMm` is measured from the flat to the far side of the hole. */
  | { readonly shape: 'd'; readonly diameterMm: number; readonly acrossFlatMm: number }
  /** `diameterMm` is measured across the flats, as hexagonal stock is sold. */
  | { readonly shape: 'hex'; readonly diameterMm: number };

/** What the disc is made as; the code and its places are the same in every form. */
export type DiscForm =
  /** Windows are holes. */
  | { readonly kind: 'through-cut' }
  /** Marks stand above a floor; `raised` says whether what stands up gives light back or not. */
  | { readonly kind: 'relief'; readonly floorMm: number; readonly raised: Brightness }
  /** Printed on film or paper; `colours` of each level, or black on clear where left out. */
  | { readonly kind: 'overlay'; readonly colours?: readonly string[] }
  /** Each level is a material of its own, let into the face; colour of each level, `#rrggbb`. */
  | { readonly kind: 'inlay'; readonly depthMm: number; readonly colours: readonly string[] }
  /** Etched on a board; copper stops light that shines through the board, or gives back light that shines on it. */
  | { readonly kind: 'copper'; readonly copper: Brightness };

/** Whether a surface counts as window (light) or land (dark). */
export type Brightness = 'light' | 'dark';

/** What joins the disc to its shaft besides its bore: a printed part on its plain face. */
export type HubSpec =
  | { readonly kind: 'plain' }
  /** A split ring that a screw closes on the shaft. */
  | { readonly kind: 'clamp'; readonly heightMm: number; readonly screwMm: number }
  /** A seat for a bearing on which the disc turns; `clearanceMm` is added to the bearing's diameter. */
  | {
      readonly kind: 'bearing-seat';
      readonly bearingDiameterMm: number;
      readonly bearingWidthMm: number;
      readonly clearanceMm: number;
    };

/** The same code unrolled along a straight line, for gates and floats. */
export interface StripSpec {
  /** Travel that runs once through all positions. [mm] */
  readonly turnLengthMm: number;
  /** Pattern that goes on beyond either end of that travel. [mm] */
  readonly leadMm: number;
}

/** How the drawing differs from the part that is wanted, so that the part comes out right. */
export interface Drawn {
  /** Size drawn over size wanted. [-], 1 for true size */
  readonly scale: number;
  /** How far every edge of the material is drawn outwards, because the tool takes that much; below 0 for a print. [mm] */
  readonly edgeLossMm: number;
  /** Drawn bore less wanted bore. [mm] */
  readonly boreAllowanceMm: number;
  /** How far the first layer of a print comes out beyond those above, on each edge. [mm] */
  readonly footGrowthMm: number;
}

/** What the maker's process can do; defaults by kind, each replaced by the maker's own measurement. */
export interface Process {
  readonly kind: 'fdm' | 'laser' | 'film' | 'colour-print' | 'pcb';
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
  /** Materials or inks it can lay in one part; as many as any disc has where left out. [-] */
  readonly colourCount?: number;
  /** What the maker measured on a coupon of this process; nothing where left out. */
  readonly measured?: CouponReadings;
}

/** The disc as the instrument file asks for it. */
export interface DiscSpec {
  readonly code: string;
  /** File of the maker's own words, beside the instrument file, where `code` is `own-words`; else `null`. */
  readonly codeFile: string | null;
  /** What else the maker asks of that code; empty takes the family's own choice. */
  readonly codeOptions: CodeOptions;
  /** Diameter over the rim. [mm] */
  readonly diameterMm: number;
  readonly bore: Bore;
  /** Solid round the bore; the innermost track begins here. [mm] */
  readonly hubDiameterMm: number;
  /** Printed hub; plain, so none, where left out. */
  readonly hub?: HubSpec;
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
  /** What it is made as; a print on film, or a sheet with holes, by the process where left out. */
  readonly form?: DiscForm;
  /** Unrolled along a line where given; a disc where left out. */
  readonly strip?: StripSpec;
  /** How drawings differ from the wanted part; not at all where left out. */
  readonly drawn?: Drawn;
  /** Density of the material; the usual one of the process where left out. [kg/m³] */
  readonly densityKgPerM3?: number;
}

/** A piece of a ring, clockwise from `fromDeg` to `toDeg`; `toDeg` may pass 360, and a whole ring spans 360. */
export interface RingSector {
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
}
