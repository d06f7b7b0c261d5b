import type { Cause, Proof } from './proof.ts';

/** Smaller gains are lost in the making: a hundredth of the largest error, a thousandth of the builds. [-] */
const LEAST_GAIN = { error: 0.01, yield: 0.001 } as const;

/**
 * Causes whose cure would be noticed, most worthwhile first; none where the fault lies in the design itself.
 *
 * @param proof - Its causes are already sorted.
 */
export function worthwhileCauses({ causes, builds }: Proof): Cause[] {
  const { p95 } = builds.maxErrorDeg;
  return causes.filter(
    ({ p95WithoutDeg, yieldWithout }) =>
      p95 - p95WithoutDeg >= LEAST_GAIN.error * p95 ||
      yieldWithout.value - builds.yield.value >= LEAST_GAIN.yield,
  );
}
