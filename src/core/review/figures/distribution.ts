import {
  beaufortForce,
  beaufortScale,
  BlockMeanSum,
  powerDensity,
  shareInterval,
  SpeedCounts,
  STANDARD_AIR_KG_PER_M3,
  weibullFit,
  type BeaufortForce,
  type Interval,
  type PowerDensity,
  type WeibullFit,
} from '../../wind/index.ts';
import { VanewrightError } from '../../error/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';
import { grouped } from './grouped.ts';
import { groupFigures, type GroupFigures } from './groupFigures.ts';

/** Classes of the histogram. [m/s] */
export const CLASS_M_PER_S = 1;

/** Means in fine classes, for the fit: logs are seldom finer. [m/s] */
const FINE_M_PER_S = 0.05;

/** Share of periods at one force of the Beaufort scale, with their figures. */
export interface ForceFigures {
  readonly force: BeaufortForce;
  readonly share: number;
  readonly interval: Interval | null;
  readonly figures: GroupFigures;
}

/** How the ten-minute means are distributed. */
export interface Distribution {
  /** Share of periods by class of 1 m/s from 0 on. [-] */
  readonly shares: readonly number[];
  readonly forces: readonly ForceFigures[];
  /** The fit, or why there is none. */
  readonly weibull: WeibullFit | { readonly why: string };
  /** Power in the wind, or why it is not given. */
  readonly power: PowerDensity | { readonly why: string };
}

/** Relative standard error of air density when neither pressure nor temperature are known: 15 °C ± 12 K. [-]; derived */
const AIR_RELATIVE_ERROR = 12 / 288;

/**
 * Relative standard error of the cups: 5 % of the speed at most, evenly likely within. [-]
 *
 * @source EPA-454/R-99-005 (2000), Table 5-1 (5 % of observed); JCGM 100:2008, 4.3.7 (rectangular distribution).
 */
const CUPS_RELATIVE_ERROR = 0.05 / Math.sqrt(3);

type WithSpeed = ReviewPeriod & { readonly meanMPerS: number };

/** Share of the periods that meet a condition, with its spread from week to week. */
function shareOf(periods: readonly WithSpeed[], isOne: (period: WithSpeed) => boolean) {
  const sum = new BlockMeanSum();
  const weeks = new Set<number>();
  for (const period of periods) {
    sum.add(period.endMs - 1, isOne(period) ? 1 : 0);
    weeks.add(Math.floor((period.endMs - 1) / (7 * 86_400_000)));
  }
  const { mean, standardError, groups } = sum.result();
  const share = Math.min(1, mean);
  return { share, interval: shareInterval(share, standardError, { blocks: weeks.size, groups }) };
}

/** Independent values that the mean speed rests on: those that would scatter as the weeks do. [-] */
function independentOf(periods: readonly WithSpeed[]): number | null {
  const sum = new BlockMeanSum();
  for (const { endMs, meanMPerS } of periods) sum.add(endMs - 1, meanMPerS);
  const { mean, standardError } = sum.result();
  if (standardError === null || standardError === 0) return null;
  const variance = periods.reduce((all, { meanMPerS }) => all + (meanMPerS - mean) ** 2, 0) / periods.length;
  return Math.min(periods.length, Math.max(2, variance / standardError ** 2));
}

function fitOf(periods: readonly WithSpeed[]): Distribution['weibull'] {
  const counts = new SpeedCounts(FINE_M_PER_S);
  for (const { meanMPerS } of periods) counts.add(meanMPerS);
  const { speeds, weights } = counts.occurring();
  const independent = independentOf(periods);
  if (independent === null) {
    return { why: 'Its confidence needs at least two weeks of wind that changes from week to week.' };
  }
  try {
    return weibullFit(speeds, { weights, independentReadings: independent });
  } catch (error) {
    if (!(error instanceof VanewrightError)) throw error;
    return { why: `${error.problems[0]!.what} Found: ${error.problems[0]!.got}.` };
  }
}

/**
 * Distribution of the ten-minute mean speeds: classes, Beaufort forces, Weibull fit and power density.
 *
 * @param periods - Ten-minute periods; those without speed are left out.
 * @param intervalMs - Time between two samples. [ms]
 * @returns `null` without any speed.
 * @source as `weibullFit`, `beaufortForce`, `powerDensity`.
 * @check src/core/review/figures/distribution.test.ts
 */
export function distributionOf(periods: readonly ReviewPeriod[], intervalMs: number): Distribution | null {
  const windy = periods.filter((period): period is WithSpeed => period.meanMPerS !== null);
  if (windy.length === 0) return null;
  const counts: number[] = [];
  const cubes = new BlockMeanSum();
  for (const { meanMPerS, meanCube, endMs, speedReadings } of windy) {
    const place = Math.floor(meanMPerS / CLASS_M_PER_S);
    while (counts.length <= place) counts.push(0);
    counts[place]!++;
    cubes.add(endMs - 1, meanCube!, speedReadings);
  }
  const byForce = grouped(windy, ({ meanMPerS }) => beaufortForce(meanMPerS).force);
  const highest = Math.max(...byForce.keys());
  const { mean, standardError } = cubes.result();
  return {
    shares: counts.map((count) => count / windy.length),
    forces: beaufortScale.slice(0, highest + 1).map((force) => ({
      force,
      ...shareOf(windy, ({ meanMPerS }) => beaufortForce(meanMPerS).force === force.force),
      figures: groupFigures(byForce.get(force.force) ?? [], intervalMs),
    })),
    weibull: fitOf(windy),
    power: powerOf(mean, standardError),
  };
}

function powerOf(meanCube: number, meanCubeError: number | null): Distribution['power'] {
  if (meanCubeError === null) return { why: 'Its uncertainty needs at least two weeks of wind.' };
  return powerDensity({
    meanCube,
    meanCubeError,
    airKgPerM3: STANDARD_AIR_KG_PER_M3,
    airRelativeError: AIR_RELATIVE_ERROR,
    speedRelativeError: CUPS_RELATIVE_ERROR,
  });
}
