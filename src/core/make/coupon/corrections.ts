import type { Process } from '../../disc/index.ts';
import { COUPON_BAR_MM, COUPON_MARK_MM, type CouponReadings } from './couponReadings.ts';

/** How sizes must be drawn so that they come out as wanted. */
export interface Corrections {
  /** Size drawn over size wanted: 1.06 when a print is fitted to a page and comes out at 94 %. [-] */
  readonly scale: number;
  /**
   * How far every edge of the material is drawn outwards, since the tool takes that much; below 0 for a print. [mm]
   *
   * Holes are drawn narrower by twice this, islands wider.
   */
  readonly edgeLossMm: number;
  /** Drawn bore less the shaft brought to scale, for a push fit. [mm] */
  readonly boreAllowanceMm: number;
  /** How far each edge of the first layer comes out beyond those above. [mm] */
  readonly footGrowthMm: number;
}

/** Play of a push fit in a hole that comes out as drawn. [mm] @source common practice, no source. */
const PUSH_FIT_MM = 0.1;

/** What a machine does to what is drawn: made = drawn · scale ± 2 · loss. */
interface Machine {
  readonly madeScale: number;
  /** Lost at each edge; half the width of a cut. [mm] */
  readonly lossMm: number;
}

/** One size that was measured: made = drawn · scale + sign · loss, with sign +2 for a hole, -2 for an island. */
interface Row {
  readonly drawnMm: number;
  readonly sign: 2 | -2;
  readonly madeMm: number;
}

function rowsOf({ barMm, slotMm, landMm }: CouponReadings): { bar: Row[]; marks: Row[] } {
  const row = (drawnMm: number, sign: 2 | -2, madeMm: number | null): Row[] =>
    madeMm === null ? [] : [{ drawnMm, sign, madeMm }];
  return {
    bar: row(COUPON_BAR_MM, -2, barMm),
    marks: [...row(COUPON_MARK_MM, 2, slotMm), ...row(COUPON_MARK_MM, -2, landMm)],
  };
}

/** Mean loss of marks that came out to scale. [mm] */
function meanLoss(marks: readonly Row[]): number {
  return marks.reduce((sum, { drawnMm, sign, madeMm }) => sum + (madeMm - drawnMm) / sign, 0) / marks.length;
}

/** Scale and edge loss that fit all rows best, by least squares. */
function fit(rows: readonly Row[]): Machine {
  let [aa, ab, bb, am, bm] = [0, 0, 0, 0, 0];
  for (const { drawnMm, sign, madeMm } of rows) {
    aa += drawnMm * drawnMm;
    ab += drawnMm * sign;
    bb += sign * sign;
    am += drawnMm * madeMm;
    bm += sign * madeMm;
  }
  const determinant = aa * bb - ab * ab;
  return { madeScale: (am * bb - bm * ab) / determinant, lossMm: (aa * bm - ab * am) / determinant };
}

function machineOf(process: Process, readings: CouponReadings): Machine {
  const { bar, marks } = rowsOf(readings);
  const usual = process.windowGrowthMm / 2;
  if (bar.length > 0 && marks.length > 0) return fit([...bar, ...marks]);
  if (marks.length > 0) return { madeScale: 1, lossMm: meanLoss(marks) };
  if (bar.length > 0) return { madeScale: (bar[0]!.madeMm + 2 * usual) / COUPON_BAR_MM, lossMm: usual };
  return { madeScale: 1, lossMm: usual };
}

/**
 * How sizes must be drawn, from what was measured on a coupon; the process's usual values where nothing was.
 *
 * @param process - The process that made the coupon. [mm]
 * @param readings - What the maker measured. [mm]
 * @param shaftMm - Shaft that was tried in the coupon's holes. [mm]
 * @source derived: an edge lost on each side makes a hole wider and an island narrower by twice as much; scale acts on both.
 * @check src/core/make/coupon/corrections.test.ts (made with known kerf and scale, measured, drawn again)
 */
export function correctionsFrom(process: Process, readings: CouponReadings, shaftMm: number): Corrections {
  const { madeScale, lossMm } = machineOf(process, readings);
  const scale = 1 / madeScale;
  const { boreLabelMm, footMm } = readings;
  return {
    scale,
    edgeLossMm: lossMm * scale,
    boreAllowanceMm:
      boreLabelMm === null ? (PUSH_FIT_MM - 2 * lossMm) * scale : boreLabelMm - shaftMm * scale,
    footGrowthMm: footMm === null ? 0 : (footMm / 2) * scale,
  };
}

/** Width at which a hole is drawn so that it comes out as wanted. [mm] */
export function drawnHoleMm({ scale, edgeLossMm }: Corrections, wantedMm: number): number {
  return wantedMm * scale - 2 * edgeLossMm;
}

/** Width at which an island, or any outer size, is drawn so that it comes out as wanted. [mm] */
export function drawnIslandMm({ scale, edgeLossMm }: Corrections, wantedMm: number): number {
  return wantedMm * scale + 2 * edgeLossMm;
}

/** Distance of two middles, or a radius of a place, as drawn. [mm] */
export function drawnPlaceMm({ scale }: Corrections, wantedMm: number): number {
  return wantedMm * scale;
}

/** Diameter at which a hole is drawn that a shaft goes into by hand. [mm] */
export function drawnBoreMm({ scale, boreAllowanceMm }: Corrections, shaftMm: number): number {
  return shaftMm * scale + boreAllowanceMm;
}

/**
 * The process with the maker's own numbers in place of the usual ones.
 *
 * @param process - As the instrument file gives it. [mm]
 * @param readings - What the maker measured. [mm]
 * @returns The same, `windowGrowthMm` twice the edge loss, and the narrowest marks as they came out.
 */
export function measuredProcess(process: Process, readings: CouponReadings): Process {
  const { slotMm, landMm, narrowestSlotMm, narrowestLandMm } = readings;
  const isMeasured = slotMm !== null || landMm !== null;
  const growth = isMeasured ? 2 * machineOf(process, readings).lossMm : process.windowGrowthMm;
  return {
    ...process,
    windowGrowthMm: growth,
    minWindowMm: narrowestSlotMm ?? process.minWindowMm,
    minLandMm: narrowestLandMm ?? process.minLandMm,
  };
}
