import {
  BlockMeanSum,
  blockOf,
  groupOf,
  gustFactor,
  HeadingSum,
  jackknifeError,
  studentFactor,
  turbulenceIntensity,
  windRunKm,
  WindVectorSum,
  yamartinoSpread,
  type BlockMean,
  type Gust,
} from '../../wind/index.ts';
import { turnBetween, type Degrees } from '../../units/index.ts';
import type { ReviewPeriod } from '../sum/reviewPeriod.ts';

/** Mean of a figure with its 95 % interval; `null` where no period gives it. */
type Mean = BlockMean | null;

/** What a group of ten-minute periods comes to: the whole time, an hour of the day, a month. */
export interface GroupFigures {
  /** Periods with any sample. [-] */
  readonly periods: number;
  readonly samples: number;
  /** Scalar mean of speed, calms with it. [m/s] */
  readonly speed: Mean;
  /** Mean of the unit vectors, calms left out; `null` = none, or they cancel out. [deg] */
  readonly headingDeg: Degrees | null;
  /** Half of its 95 % interval from week to week; `null` = shorter than two weeks, or wider than half a turn. [deg] */
  readonly headingWithinDeg: Degrees | null;
  /** Length of the mean unit vector. [-] */
  readonly agreement: number | null;
  /** Spread of direction (Yamartino). [deg] */
  readonly spreadDeg: Degrees | null;
  /** Speed of the mean vector, and where it comes from. [m/s], [deg] */
  readonly vectorSpeedMPerS: number | null;
  readonly vectorHeadingDeg: Degrees | null;
  /** Vector speed over scalar speed. [-] */
  readonly steadiness: number | null;
  /** Share of calm samples among those with a speed. [-] */
  readonly calmShare: Mean;
  /** Means over the periods of their own figures; those whose mean is 0 have none. [-] */
  readonly turbulenceIntensity: Mean;
  readonly gustFactor: Mean;
  /** Highest 3 s mean. */
  readonly gust: Gust | null;
  /** Way of the air past the cups, in the time that was measured. [km] */
  readonly windRunKm: number | null;
}

/** Unit vectors by group of weeks: what a mean heading's uncertainty is worked out from. */
class HeadingBlocks {
  private readonly groups = new Map<number, HeadingSum>();

  add({ endMs, north, east, headingReadings, calms }: ReviewPeriod): void {
    if (headingReadings === calms) return;
    const group = groupOf(blockOf(endMs - 1));
    const sum = this.groups.get(group) ?? new HeadingSum();
    sum.addSum(headingReadings - calms, north, east);
    this.groups.set(group, sum);
  }

  /** Sum of all groups but one. */
  private without(left: HeadingSum | null): HeadingSum {
    const sum = new HeadingSum();
    for (const one of this.groups.values()) if (one !== left) sum.merge(one);
    return sum;
  }

  figures(): Pick<GroupFigures, 'headingDeg' | 'headingWithinDeg' | 'agreement' | 'spreadDeg'> {
    const whole = this.without(null);
    if (whole.weight === 0) {
      return { headingDeg: null, headingWithinDeg: null, agreement: null, spreadDeg: null };
    }
    const { headingDeg, agreement } = whole.mean();
    const spreadDeg = yamartinoSpread(agreement);
    return { headingDeg, headingWithinDeg: this.within(headingDeg), agreement, spreadDeg };
  }

  /** Half of the 95 % interval by leaving out one group of weeks at a time. [deg] */
  private within(headingDeg: Degrees | null): Degrees | null {
    const groups = [...this.groups.values()];
    if (headingDeg === null || groups.length < 2) return null;
    const turns = groups.map((group) => {
      const rest = this.without(group).mean().headingDeg;
      return rest === null ? 180 : turnBetween(headingDeg, rest);
    });
    const error = jackknifeError(
      0,
      turns,
      groups.map(({ weight }) => weight),
    );
    const half = error === null ? null : studentFactor(groups.length - 1) * error;
    return half === null || half >= 180 ? null : half;
  }
}

/**
 * Figures of a group of periods, each with its uncertainty from week to week.
 *
 * @param periods - In any order.
 * @param intervalMs - Time between two samples, for the way of the wind. [ms]
 * @source EPA-454/R-99-005 (2000), section 6.2 (means); the uncertainty as `BlockMeanSum`, for headings derived.
 * @check src/core/review/figures/groupFigures.test.ts
 */
export function groupFigures(periods: readonly ReviewPeriod[], intervalMs: number): GroupFigures {
  const [speed, calm, turbulence, factor] = Array.from({ length: 4 }, () => new BlockMeanSum());
  const headings = new HeadingBlocks();
  const vector = new WindVectorSum();
  let [samples, speeds] = [0, 0];
  let gust: Gust | null = null;
  for (const period of periods) {
    const { endMs, meanMPerS, deviationMPerS, speedReadings, calms, bothReadings } = period;
    const atMs = endMs - 1; // the period's own week, also where it ends with the week
    samples += period.samples;
    headings.add(period);
    if (bothReadings > 0) vector.addSum(bothReadings, period.windNorth, period.windEast, period.windSpeeds);
    if (period.gust && period.gust.speedMPerS > (gust?.speedMPerS ?? -1)) gust = period.gust;
    if (meanMPerS === null) continue;
    speeds += speedReadings;
    speed!.add(atMs, meanMPerS, speedReadings);
    calm!.add(atMs, calms / speedReadings, speedReadings);
    const intensity = turbulenceIntensity(deviationMPerS!, meanMPerS);
    if (intensity !== null) turbulence!.add(atMs, intensity);
    const ratio = period.gust && gustFactor(period.gust.speedMPerS, meanMPerS);
    if (ratio !== null) factor!.add(atMs, ratio);
  }
  const mean = resultOf(speed!);
  const way = vector.readings > 0 ? vector.mean() : null;
  return {
    periods: periods.length,
    samples,
    speed: mean,
    ...headings.figures(),
    vectorSpeedMPerS: way?.vectorSpeedMPerS ?? null,
    vectorHeadingDeg: way?.headingDeg ?? null,
    steadiness: way?.steadiness ?? null,
    calmShare: resultOf(calm!),
    turbulenceIntensity: resultOf(turbulence!),
    gustFactor: resultOf(factor!),
    gust,
    windRunKm: mean && windRunKm(mean.mean, (speeds * intervalMs) / 1000),
  };
}

function resultOf(sum: BlockMeanSum): Mean {
  return sum.isEmpty ? null : sum.result();
}
