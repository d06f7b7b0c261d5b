import type { Problem } from '../../error/index.ts';
import type { Process } from '../discSpec.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { correctionsFrom } from './corrections.ts';
import { COUPON_BAR_MM, COUPON_MARK_MM, type CouponReadings } from './couponReadings.ts';

/** Largest edge loss or growth that is not a slip of the pen. [mm] @source common practice, no source. */
const MOST_EDGE_MM = 0.6;

/** Largest difference from true size that a part's drawing still makes good. [-] @source common practice, no source. */
const MOST_SCALE = 0.02;

/** Most that slot and tongue may disagree about the edge. [mm] @source common practice, no source: two readings of a caliper. */
const MOST_DISAGREEMENT_MM = 0.3;

function disagreement({ slotMm, landMm }: CouponReadings, scale: number): number {
  if (slotMm === null || landMm === null) return 0;
  // Slot and tongue were drawn alike, so that together they must be twice one of them.
  return Math.abs(slotMm + landMm - 2 * scale * COUPON_MARK_MM);
}

/**
 * Readings that cannot be right, or that tell of a print that was not made at its true size.
 *
 * @param process - The process that made the coupon. [mm]
 * @param readings - What the maker measured. [mm]
 * @param field - Field of the instrument file that holds them.
 * @returns `disc/print-scaled`, `disc/edge-implausible`, `disc/marks-disagree`, `disc/contrast-impossible`; n ≥ 0
 */
export function readingProblems(process: Process, readings: CouponReadings, field: string): Problem[] {
  const { scale: drawnScale, edgeLossMm } = correctionsFrom(process, readings, 0);
  const scale = 1 / drawnScale;
  const problems: Problem[] = [];
  if (Math.abs(scale - 1) > MOST_SCALE) {
    problems.push({
      code: 'disc/print-scaled',
      what: 'The coupon did not come out at its true size: it was fitted to a page, or the machine is out of adjustment.',
      where: `${field}.barMm`,
      got: `${showMm(readings.barMm ?? COUPON_BAR_MM)}, ${showNumber(100 * scale, 1)} % of what was drawn`,
      allowed: `${showMm(COUPON_BAR_MM * (1 - MOST_SCALE))} to ${showMm(COUPON_BAR_MM * (1 + MOST_SCALE))}`,
      fix: 'Make the coupon again at 100 %, without fitting it to the page, and measure the bar anew.',
    });
  }
  if (Math.abs(edgeLossMm) > MOST_EDGE_MM) {
    problems.push({
      code: 'disc/edge-implausible',
      what: 'By these readings every edge lies farther from its place than any working machine would put it.',
      where: readings.slotMm === null ? `${field}.landMm` : `${field}.slotMm`,
      got: `${showMm(edgeLossMm)} at each edge`,
      allowed: `${showMm(-MOST_EDGE_MM)} to ${showMm(MOST_EDGE_MM)}`,
      fix: `Measure the slot and the tongue labelled 2.0 again: the slot comes out near ${showMm(COUPON_MARK_MM + process.windowGrowthMm)}.`,
    });
  }
  const apart = disagreement(readings, scale);
  if (apart > MOST_DISAGREEMENT_MM) {
    problems.push({
      code: 'disc/marks-disagree',
      what: 'Slot and tongue tell different things: one grows by what the other loses.',
      where: `${field}.landMm`,
      got: `${showMm(readings.slotMm!)} and ${showMm(readings.landMm!)}, together off by ${showMm(apart)}`,
      allowed: `together ${showMm(2 * scale * COUPON_MARK_MM)}, within ${showMm(MOST_DISAGREEMENT_MM)}`,
      fix: `Measure both again; with the slot at ${showMm(readings.slotMm!)} the tongue is near ${showMm(2 * scale * COUPON_MARK_MM - readings.slotMm!)}.`,
    });
  }
  return [...problems, ...contrastProblems(readings, field)];
}

function contrastProblems({ contrast }: CouponReadings, field: string): Problem[] {
  if (!contrast || (contrast.open > contrast.oneLayer && contrast.oneLayer >= contrast.twoLayers)) return [];
  const { open, oneLayer, twoLayers } = contrast;
  return [
    {
      code: 'disc/contrast-impossible',
      what: 'More layers cannot let more light through.',
      where: `${field}.contrast`,
      got: `open ${showNumber(open, 3)}, one layer ${showNumber(oneLayer, 3)}, two layers ${showNumber(twoLayers, 3)}`,
      allowed: 'open above one layer, and two layers no more than one',
      fix: `Read them again on a scale that grows with light; if yours falls with light, write full scale less each reading.`,
    },
  ];
}
