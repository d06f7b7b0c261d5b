/** What a code is chosen for: the need, the room on the disc, and what the maker's process and sensors can do. */
export interface CodeNeed {
  /** N. [-], whole */
  readonly positions: number;
  /** The direction must be known at switching on, before anything has turned. */
  readonly mustSurvivePowerLoss: boolean;
  /** The shaft can turn past 360°, so the last position and the first are neighbours. */
  readonly turnsFully: boolean;
  /** Most light sensors the maker will build or the board can read. [-] */
  readonly mostChannels: number;
  /** What a sensor tells apart: light and dark, three grey levels, or three colours of which none is a blend of the others. */
  readonly marks: 'light-dark' | 'greys' | 'colours';
  /** The level of the code that lets light through. */
  readonly windowLevel: 0 | 1;
  /** Where tracks may lie. [mm] */
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  /** Ring of material between two tracks. [mm] */
  readonly webMm: number;
  /** What the process can make: an opening, the material between two, and a track across. [mm] */
  readonly minWindowMm: number;
  readonly minLandMm: number;
  readonly minTrackWidthMm: number;
  /** Standard deviation of where an edge meets a sensor, disc and head together. [mm] */
  readonly edgeSdMm: number;
}

/** One argument for a code or against it. */
export interface Reason {
  readonly isGood: boolean;
  readonly text: string;
}

/** How a code serves a need, from best to worst. */
export const VERDICTS = ['fits', 'risky', 'does-not-fit', 'cannot'] as const;
/** One of those. */
export type Verdict = (typeof VERDICTS)[number];
