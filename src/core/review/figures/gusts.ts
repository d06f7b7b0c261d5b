import { HeadingSum, type Gust } from '../../wind/index.ts';
import type { Degrees } from '../../units/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';

/** One of the highest gusts, with the ten minutes that it came in. */
export interface TopGust extends Gust {
  /** End of its ten minutes. [ms UTC] */
  readonly endMs: number;
  /** Mean of its ten minutes. [m/s] */
  readonly meanMPerS: number;
  /** Mean heading of its ten minutes; `null` where there is none. [deg] */
  readonly headingDeg: Degrees | null;
}

/** Two gusts closer than this are of one blow. [ms]; common practice, value from memory (48 h for extremes) */
const APART_MS = 48 * 3_600_000;

/**
 * The highest gusts that are at least two days apart, highest first.
 *
 * @param periods - In order of time.
 * @param most - How many at most. [-]
 * @check src/core/review/figures/gusts.test.ts
 */
export function topGusts(periods: readonly ReviewPeriod[], most: number): TopGust[] {
  const gusty = periods
    .filter(({ gust, meanMPerS }) => gust !== null && meanMPerS !== null)
    .sort((a, b) => b.gust!.speedMPerS - a.gust!.speedMPerS);
  const top: TopGust[] = [];
  for (const period of gusty) {
    if (top.length === most) break;
    const gust = period.gust!;
    if (top.some(({ atMs }) => Math.abs(atMs - gust.atMs) < APART_MS)) continue;
    const sum = new HeadingSum();
    sum.addSum(period.headingReadings - period.calms, period.north, period.east);
    top.push({
      ...gust,
      endMs: period.endMs,
      meanMPerS: period.meanMPerS!,
      headingDeg: sum.weight > 0 ? sum.mean().headingDeg : null,
    });
  }
  return top;
}
