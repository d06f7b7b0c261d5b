/**
 * Time between two samples, as most of a record's first samples keep it.
 *
 * @param atMs - Instants, rising; a few hours are enough. [ms UTC]
 * @returns Median of the steps; `null` with fewer than two samples. [ms]
 * @check src/core/review/sum/reviewSum.test.ts
 */
export function sampleIntervalMs(atMs: Float64Array): number | null {
  const MOST = 10_000;
  const steps = Array.from(atMs.subarray(1, MOST), (at, i) => at - atMs[i]!).sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? null;
}
