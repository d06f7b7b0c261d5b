import type { Drawn, Process } from '../discSpec.ts';
import { COUPON_BAR_MM, COUPON_MARK_MM, UNMEASURED, type CouponReadings } from './couponReadings.ts';

/** Finest mark that any process is taken to hold. [mm] @source common practice, no source. */
const LEAST_MARK_MM = 0.05;

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
 * @check src/core/disc/measured/corrections.test.ts (made with known kerf and scale, measured, drawn again)
 */
export function correctionsFrom(process: Process, readings: CouponReadings, shaftMm: number): Drawn {
  const { madeScale, lossMm } = machineOf(process, readings);
  const scale = 1 / madeScale;
  const { boreLabelMm, footMm } = readings;
  return {
    scale,
    edgeLossMm: lossMm,
    boreAllowanceMm: boreLabelMm === null ? PUSH_FIT_MM - 2 * lossMm : boreLabelMm / scale - shaftMm,
    footGrowthMm: footMm === null ? 0 : footMm / 2,
  };
}

/** Width at which a hole is drawn so that it comes out as wanted. [mm] */
export function drawnHoleMm({ scale, edgeLossMm }: Drawn, wantedMm: number): number {
  return (wantedMm - 2 * edgeLossMm) * scale;
}

/** Width at which an island, or any outer size, is drawn so that it comes out as wanted. [mm] */
export function drawnIslandMm({ scale, edgeLossMm }: Drawn, wantedMm: number): number {
  return (wantedMm + 2 * edgeLossMm) * scale;
}

/** Distance of two middles, or a radius of a place, as drawn. [mm] */
export function drawnPlaceMm({ scale }: Drawn, wantedMm: number): number {
  return wantedMm * scale;
}

/** Diameter at which a hole is drawn that a shaft goes into by hand. [mm] */
export function drawnBoreMm({ scale, boreAllowanceMm }: Drawn, shaftMm: number): number {
  return (shaftMm + boreAllowanceMm) * scale;
}

/** True where anything was measured that says how to draw. */
function isSized({ barMm, slotMm, landMm, boreLabelMm, footMm }: CouponReadings): boolean {
  return [barMm, slotMm, landMm, boreLabelMm, footMm].some((reading) => reading !== null);
}

/**
 * The process as it serves once a coupon of it was measured, and how drawings make good what it does.
 *
 * Windows then come out as wanted, so `windowGrowthMm` is 0. The narrowest marks are told as they came out, not by
 * their labels.
 *
 * @param process - As the instrument file gives it. [mm]
 * @param shaftMm - Shaft that was tried in the coupon's holes. [mm]
 * @returns `drawn` is `null` where no size was measured: drawings then show the part as wanted, and the proof reckons
 * with the growth.
 * @source made = drawn · scale ± 2 · loss.
 * @check src/core/disc/measured/corrections.test.ts
 */
export function measuredProcess(
  process: Process,
  shaftMm: number,
): { process: Process; drawn: Drawn | null } {
  const readings = process.measured ?? UNMEASURED;
  if (!isSized(readings)) return { process, drawn: null };
  const { madeScale, lossMm } = machineOf(process, readings);
  const { narrowestSlotMm, narrowestLandMm } = readings;
  const least = (label: number | null, change: number, usual: number): number =>
    label === null ? usual : Math.max(label * madeScale + change, LEAST_MARK_MM);
  return {
    process: {
      ...process,
      windowGrowthMm: 0,
      minWindowMm: least(narrowestSlotMm, 2 * lossMm, process.minWindowMm),
      minLandMm: least(narrowestLandMm, -2 * lossMm, process.minLandMm),
    },
    drawn: correctionsFrom(process, readings, shaftMm),
  };
}
