import type { Stretch } from '../reading/recording.ts';

/** One change of a recorded column. */
export interface Change {
  /** Index of its stretch. */
  readonly stretch: number;
  readonly column: number;
  /** What the column reads after it: 1 high counts, 0 low. */
  readonly value: 0 | 1;
  /** When it passed the middle between its two levels. [ms] */
  readonly timeMs: number;
  /** Standard deviation of that moment, from sampling and noise. [ms] */
  readonly sigmaMs: number;
  /** Sample at which it was over. */
  readonly sample: number;
}

/** Where a column is cut in two. */
export interface Cut {
  readonly lowCounts: number;
  readonly highCounts: number;
  /** Distance of the two plateaus, and noise of one sample. [counts] */
  readonly swing: number;
  readonly sigma: number;
}

/** A run of one value of a column, and how far it got. */
export interface Run {
  readonly value: 0 | 1;
  readonly from: number;
  readonly to: number;
  /** Highest counts of a high run, lowest of a low one. [counts] */
  readonly extreme: number;
}

/**
 * Runs of a column in one stretch, through thresholds with hysteresis.
 *
 * @param values - Samples of the column. [counts], n ≥ 1
 */
export function runsOf(values: readonly number[], { lowCounts, highCounts }: Cut): Run[] {
  const runs: Run[] = [];
  const middle = (lowCounts + highCounts) / 2;
  let value: 0 | 1 = values[0]! > middle ? 1 : 0;
  let from = 0;
  let extreme = values[0]!;
  for (let i = 1; i < values.length; i++) {
    const now = values[i]!;
    const flips = value === 1 ? now <= lowCounts : now >= highCounts;
    if (flips) {
      runs.push({ value, from, to: i, extreme });
      value = value === 1 ? 0 : 1;
      from = i;
      extreme = now;
    } else if (value === 1 ? now > extreme : now < extreme) extreme = now;
  }
  runs.push({ value, from, to: values.length, extreme });
  return runs;
}

/** Changes of a column in one stretch: where the straight line between two samples passes the middle. */
export function changesOf(stretch: Stretch, index: number, column: number, cut: Cut): Change[] {
  const values = stretch.rows.map((row) => row[column]!);
  const middle = (cut.lowCounts + cut.highCounts) / 2;
  return runsOf(values, cut)
    .slice(1)
    .map(({ value, from }) => {
      let after = from;
      while (after > 1 && isPast(values[after - 1]!, middle, value)) after--;
      const [a, b] = [values[after - 1]!, values[after]!];
      const [start, end] = [stretch.timesMs[after - 1]!, stretch.timesMs[after]!];
      const share = a === b ? 0.5 : Math.min(1, Math.max(0, (middle - a) / (b - a)));
      // Between two samples on a slope the moment is known by the counts; across a jump it may be anywhere.
      const jump = Math.min(1, Math.abs(b - a) / cut.swing);
      const noise = (cut.sigma / Math.max(Math.abs(b - a), cut.sigma)) * (end - start);
      const sigmaMs = Math.hypot(((end - start) * jump) / Math.sqrt(12), Math.min(noise, end - start));
      return { stretch: index, column, value, timeMs: start + share * (end - start), sigmaMs, sample: from };
    });
}

const isPast = (counts: number, middle: number, value: 0 | 1): boolean =>
  value === 1 ? counts >= middle : counts <= middle;
