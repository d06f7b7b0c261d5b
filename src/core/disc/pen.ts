/** A place on the sheet: y up, x right, the disc's axis at the origin, disc angle 0 straight up. [mm] */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

/** Draws closed outlines on a y-up sheet; every file format is one of these. */
export interface Pen {
  /** Begins a new outline. */
  moveTo(to: Point): void;
  lineTo(to: Point): void;
  /** True arc about `centre`; `clockwise` as seen on the sheet. Spans less than a full turn. */
  arcTo(to: Point, centre: Point, clockwise: boolean): void;
  /** Ends the outline where it began. */
  close(): void;
}
