import type { Degrees } from '../../units/index.ts';
import { noReadings, requirePositive } from '../refusal.ts';
import { GROUPS } from '../uncertainty/block.ts';
import { type Interval, shareInterval } from '../uncertainty/interval.ts';
import { jackknifeError } from '../uncertainty/jackknife.ts';
import type { RoseLayout, RoseSum } from './roseSum.ts';
import { sectorCentreDeg } from './sectors.ts';

/** A share of the time with what it rests on. */
export interface RoseShare {
  /** [-], 0..1 of the time that could be read, calms with it */
  readonly share: number;
  /** 95 % interval from week to week; `null` when the record is shorter than two weeks. [-] */
  readonly interval: Interval | null;
  /** What the share could be had the missing time been all elsewhere, or all here; `null` = not known. [-] */
  readonly bounds: Interval | null;
}

/** One petal. */
export interface Petal extends RoseShare {
  /** Middle of the sector, in [0, 360). [deg] */
  readonly centreDeg: Degrees;
  /** Share by speed class, lowest first; they add up to the petal's. [-] */
  readonly byClass: readonly number[];
  /** Weight of the readings in it, whatever the weighting. [-] */
  readonly readings: number;
}

/** A rose as data, with all that must stand on its picture. */
export interface Rose {
  readonly layout: RoseLayout;
  /** Clockwise, first sector first. */
  readonly petals: readonly Petal[];
  /** Calms as their own class; `null` without cups, where nobody knows. */
  readonly calm: (RoseShare & { readonly readings: number }) | null;
  /** Weight of all readings shown, calms with them. [-] */
  readonly readings: number;
  /** Readings over those the clock expects; `null` = not known. [-] */
  readonly coverage: number | null;
  /** Samples left out: wind without a readable heading, and samples without a speed. [-] */
  readonly withoutHeading: number;
  readonly withoutSpeed: number;
  /** Strata that should count the same but have no reading at all, so that the others stand for them. [-] */
  readonly emptyStrata: number;
}

/**
 * Shares of a rose with their confidence.
 *
 * With equal weight each stratum that has any reading counts the same. Confidence comes from leaving out each
 * group of weeks in turn, so that it holds for readings that follow each other closely.
 *
 * @param sum - Samples summed up.
 * @param expected - Readings that the clock expects for the span, in the weight used; `null` = not known. [-], > 0
 * @returns Petals and calms; all shares together are 1. [-]
 * @throws `wind/no-readings` when nothing readable was added; `wind/bad-reading` for `expected`.
 * @source Post-stratified share: W. G. Cochran, Sampling Techniques, 3rd ed., Wiley 1977 (value from memory);
 *   bounds for missing time: C. F. Manski, Amer. Econ. Rev. 80 (1990) 319 (value from memory).
 * @check src/core/wind/rose/rose.test.ts
 */
export function roseOf(sum: RoseSum, expected: number | null = null): Rose {
  if (expected !== null) requirePositive(expected, 'roseOf(expected)', 'readings');
  const { layout, strata } = sum;
  const width = layout.sectors.count + 1;
  const totals = totalCells(sum);
  const readings = totals.reduce((all, weight) => all + weight, 0);
  if (!(readings > 0)) throw noReadings('roseOf(sum)');
  const shares = stratifiedShares(totals, strata, width);
  const errors = shareErrors(sum, totals, shares);
  const coverage = expected === null ? null : readings / expected;
  const support = { blocks: sum.blocks.size, groups: errors.groups };
  const shareAt = (place: number): RoseShare => ({
    share: shares[place]!,
    interval: shareInterval(shares[place]!, errors.byPlace[place]!, support),
    bounds: layout.equalWeight === 'reading' ? missingBounds(shares[place]!, coverage) : null,
  });
  const weightAt = (place: number): number => columnSum(totals, place, width);
  return {
    layout,
    petals: Array.from({ length: layout.sectors.count }, (_, sector) => ({
      ...shareAt(sector),
      centreDeg: sectorCentreDeg(layout.sectors, sector),
      byClass: classShares(sum, totals, sector),
      readings: weightAt(sector),
    })),
    calm:
      layout.speedBoundsMPerS === null
        ? null
        : { ...shareAt(layout.sectors.count), readings: weightAt(layout.sectors.count) },
    readings,
    coverage,
    withoutHeading: sum.withoutHeading,
    withoutSpeed: sum.withoutSpeed,
    emptyStrata: stratumWeights(totals, strata, width).filter((weight) => weight === 0).length,
  };
}

/** Weight by stratum and sector (calms last), all groups together. */
function totalCells({ groupCells, strata, layout }: RoseSum): Float64Array {
  const totals = new Float64Array(strata * (layout.sectors.count + 1));
  groupCells.forEach((weight, i) => (totals[i % totals.length]! += weight));
  return totals;
}

function stratumWeights(cells: Float64Array, strata: number, width: number): number[] {
  return Array.from({ length: strata }, (_, stratum) =>
    cells.subarray(stratum * width, (stratum + 1) * width).reduce((all, weight) => all + weight, 0),
  );
}

function columnSum(cells: Float64Array, place: number, width: number): number {
  let sum = 0;
  for (let i = place; i < cells.length; i += width) sum += cells[i]!;
  return sum;
}

/** Mean over the strata that have readings of the share within each. */
function stratifiedShares(cells: Float64Array, strata: number, width: number): Float64Array {
  const weights = stratumWeights(cells, strata, width);
  const filled = weights.filter((weight) => weight > 0).length;
  const shares = new Float64Array(width);
  cells.forEach((weight, i) => {
    const stratumWeight = weights[Math.floor(i / width)]!;
    if (stratumWeight > 0) shares[i % width]! += weight / stratumWeight / filled;
  });
  return shares.map((share) => Math.min(1, share)); // a single sector can round above 1
}

/** Standard error of each share by leaving out one group of weeks at a time. */
function shareErrors(
  { groupCells, strata }: RoseSum,
  totals: Float64Array,
  shares: Float64Array,
): { readonly groups: number; readonly byPlace: readonly (number | null)[] } {
  const size = totals.length;
  const groups = Array.from({ length: GROUPS }, (_, group) =>
    groupCells.subarray(group * size, (group + 1) * size),
  );
  const filled = groups
    .map((cells) => ({ cells, weight: cells.reduce((all, weight) => all + weight, 0) }))
    .filter(({ weight }) => weight > 0);
  if (filled.length < 2) return { groups: filled.length, byPlace: Array.from(shares, () => null) };
  const without = filled.map(({ cells }) =>
    stratifiedShares(
      totals.map((weight, i) => lessOf(weight, cells[i]!)),
      strata,
      shares.length,
    ),
  );
  const sizes = filled.map(({ weight }) => weight);
  const byPlace = Array.from(shares, (share, place) =>
    jackknifeError(
      share,
      without.map((row) => row[place]!),
      sizes,
    ),
  );
  return { groups: filled.length, byPlace };
}

/** Difference of two weights, 0 where only the rounding of the sums is left: it would count as a full stratum. */
function lessOf(weight: number, part: number): number {
  const rest = weight - part;
  return rest > 1e-9 * weight ? rest : 0;
}

/** Shares of a sector by speed class under the same weighting. */
function classShares(
  { cells, classes, strata, layout }: RoseSum,
  totals: Float64Array,
  sector: number,
): number[] {
  const { count } = layout.sectors;
  const weights = stratumWeights(totals, strata, count + 1);
  const filled = weights.filter((weight) => weight > 0).length;
  return Array.from({ length: classes }, (_, speedClass) =>
    weights.reduce((share, weight, stratum) => {
      const cell = cells[(stratum * count + sector) * classes + speedClass]!;
      return weight > 0 ? share + cell / weight / filled : share;
    }, 0),
  );
}

function missingBounds(share: number, coverage: number | null): Interval | null {
  if (coverage === null) return null;
  const seen = Math.min(1, coverage); // more readings than the clock expects leave nothing missing
  return { low: share * seen, high: share * seen + (1 - seen) };
}
