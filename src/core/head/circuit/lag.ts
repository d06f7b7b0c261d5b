/**
 * Time until a first-order follower has gone from one level to a threshold on its way to another.
 *
 * @param way - Where it starts, where it would end, the threshold between; any one unit. `tauMs` is its time constant.
 * @returns `Infinity` when the threshold is not passed on the way. [ms]
 * @source derived: y(t) = to + (from − to) e^(−t/τ); for a photoresistor's conductance and the best resistor it is
 * τ ln(1 + √k) going dark and τ ln(1 + 1/√k) going light, k the ratio of dark to lit resistance.
 * @check test/published/divider (71.94 ms)
 */
export function lagMs(way: { from: number; to: number; threshold: number; tauMs: number }): number {
  const { from, to, threshold, tauMs } = way;
  const left = (threshold - to) / (from - to);
  if (left >= 1) return 0;
  return left > 0 ? -tauMs * Math.log(left) : Infinity;
}
