/** Sizes drawn on the coupon that the maker measures. [mm] */
export const COUPON_BAR_MM = 50;

/** Width of the slot, and of the tongue, that the maker measures. [mm] */
export const COUPON_MARK_MM = 2;

/** What a light sensor shows through the coupon, on any scale that grows with light. */
export interface ContrastReadings {
  /** Through the open window. */
  readonly open: number;
  /** Behind the disc's own thickness. */
  readonly oneLayer: number;
  /** Behind twice that thickness. */
  readonly twoLayers: number;
}

/** What a maker measured on the coupon; `null` where it was not measured. */
export interface CouponReadings {
  /** Length of the scale bar, drawn 50 mm. [mm] */
  readonly barMm: number | null;
  /** Width of the 2 mm slot. [mm] */
  readonly slotMm: number | null;
  /** Width of the 2 mm tongue. [mm] */
  readonly landMm: number | null;
  /** Narrowest slot that came out open from end to end, by its label. [mm] */
  readonly narrowestSlotMm: number | null;
  /** Narrowest tongue that came out whole, by its label. [mm] */
  readonly narrowestLandMm: number | null;
  /** Label of the tightest hole that the shaft goes into by hand. [mm] */
  readonly boreLabelMm: number | null;
  /** Width of the bar in its first layer, less its width above. [mm] */
  readonly footMm: number | null;
  readonly contrast: ContrastReadings | null;
}

/** A coupon that nobody has measured yet. */
export const UNMEASURED: CouponReadings = {
  barMm: null,
  slotMm: null,
  landMm: null,
  narrowestSlotMm: null,
  narrowestLandMm: null,
  boreLabelMm: null,
  footMm: null,
  contrast: null,
};
