import { BlockMeanSum, HeadingSum, type BlockMean, type Rose, type Sectors } from '../../wind/index.ts';
import { turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';

/** One sector of two records. */
export interface ComparedSector {
  readonly centreDeg: Degrees;
  /** Share of the time. [-] */
  readonly share: number;
  readonly otherShare: number;
  /** The other's less this one's. [-] */
  readonly difference: number;
  /** Whether the two 95 % intervals lie apart; `null` where one of them is not known. */
  readonly isApart: boolean | null;
  /** Mean of the ten-minute speeds whose mean heading lies in the sector. [m/s] */
  readonly speed: BlockMean | null;
  readonly otherSpeed: BlockMean | null;
  /** Only where both have the same ten minutes: the other's heading less this one's, and the quotient of the speeds. */
  readonly turnDeg: BlockMean | null;
  readonly speedRatio: BlockMean | null;
}

/** Two periods of a station, or two stations, sector by sector. */
export interface Comparison {
  /** What it is compared with, in words. */
  readonly against: string;
  readonly sectors: readonly ComparedSector[];
  readonly calm: { readonly share: number; readonly otherShare: number } | null;
  /** Ten minutes that both have. [-] */
  readonly together: number;
}

/** Mean heading of ten minutes; `null` where there is none. [deg] */
function headingOf({ headingReadings, calms, north, east }: ReviewPeriod): Degrees | null {
  if (headingReadings === calms) return null;
  const sum = new HeadingSum();
  sum.addSum(headingReadings - calms, north, east);
  return sum.mean().headingDeg;
}

function sectorOf({ count, firstCentreDeg }: Sectors, headingDeg: Degrees): number {
  const width = 360 / count;
  return Math.floor(wrapDegrees(headingDeg - firstCentreDeg + width / 2) / width) % count;
}

class SectorSums {
  readonly speed = new BlockMeanSum();
  readonly other = new BlockMeanSum();
  readonly turn = new BlockMeanSum();
  readonly ratio = new BlockMeanSum();
}

const resultOf = (sum: BlockMeanSum): BlockMean | null => (sum.isEmpty ? null : sum.result());

function addSpeeds(
  sectors: Sectors,
  sums: readonly SectorSums[],
  periods: readonly ReviewPeriod[],
  which: 'speed' | 'other',
): void {
  for (const period of periods) {
    const heading = headingOf(period);
    if (heading === null || period.meanMPerS === null) continue;
    sums[sectorOf(sectors, heading)]![which].add(period.endMs - 1, period.meanMPerS, period.speedReadings);
  }
}

/** Same ten minutes of both, by the sector of this one. */
function addPairs(
  sectors: Sectors,
  sums: readonly SectorSums[],
  periods: readonly ReviewPeriod[],
  others: readonly ReviewPeriod[],
): number {
  const byEnd = new Map(others.map((other) => [other.endMs, other]));
  let together = 0;
  for (const period of periods) {
    const other = byEnd.get(period.endMs);
    if (!other) continue;
    together++;
    const [heading, otherHeading] = [headingOf(period), headingOf(other)];
    if (heading === null) continue;
    const sum = sums[sectorOf(sectors, heading)]!;
    if (otherHeading !== null) sum.turn.add(period.endMs - 1, turnBetween(heading, otherHeading));
    if (period.meanMPerS !== null && period.meanMPerS > 0 && other.meanMPerS !== null) {
      sum.ratio.add(period.endMs - 1, other.meanMPerS / period.meanMPerS);
    }
  }
  return together;
}

/** One record of two that are compared. */
export interface ComparedRecord {
  readonly rose: Rose;
  readonly periods: readonly ReviewPeriod[];
}

/**
 * Compares two records sector by sector; where they share ten minutes, also heading with heading and speed with speed.
 *
 * @param one - Record that is reviewed. @param other - Record it is compared with; its rose has the same sectors.
 * @param against - The other in words.
 * @source Derived: difference of shares and means, each with its own 95 % interval from week to week.
 * @check src/core/review/figures/comparison.test.ts
 */
export function comparisonOf(one: ComparedRecord, other: ComparedRecord, against: string): Comparison {
  const { sectors } = one.rose.layout;
  const sums = Array.from({ length: sectors.count }, () => new SectorSums());
  addSpeeds(sectors, sums, one.periods, 'speed');
  addSpeeds(sectors, sums, other.periods, 'other');
  const together = addPairs(sectors, sums, one.periods, other.periods);
  return {
    against,
    together,
    calm:
      one.rose.calm && other.rose.calm
        ? { share: one.rose.calm.share, otherShare: other.rose.calm.share }
        : null,
    sectors: one.rose.petals.map((petal, i) => {
      const twin = other.rose.petals[i]!;
      const sum = sums[i]!;
      const known = petal.interval && twin.interval;
      return {
        centreDeg: petal.centreDeg,
        share: petal.share,
        otherShare: twin.share,
        difference: twin.share - petal.share,
        isApart: known
          ? petal.interval.high < twin.interval!.low || twin.interval!.high < petal.interval.low
          : null,
        speed: resultOf(sum.speed),
        otherSpeed: resultOf(sum.other),
        turnDeg: resultOf(sum.turn),
        speedRatio: resultOf(sum.ratio),
      };
    }),
  };
}
