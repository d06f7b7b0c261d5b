/**
 * Least-squares slope of points and its standard error.
 *
 * @param points - Pairs of time and value. [any unit], n ≥ 1
 * @returns Slope 0 with an endless error for fewer than three points. [value/time]
 */
export function trendOf(points: readonly (readonly [number, number])[]): { slope: number; error: number } {
  const n = points.length;
  if (n < 3) return { slope: 0, error: Infinity };
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / n;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / n;
  const xx = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  const xy = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  if (xx === 0) return { slope: 0, error: Infinity };
  const slope = xy / xx;
  const rest = points.reduce((sum, [x, y]) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0);
  return { slope, error: Math.sqrt(rest / (n - 2) / xx) };
}
