/**
 * Thresholds for counts that the converter has rounded down: the real value is at or above `highCounts` when the
 * rounded one is at or above its nearest whole number, and below `lowCounts` when it is below that one.
 */
export function wholeThresholds({ lowCounts, highCounts }: { lowCounts: number; highCounts: number }): {
  low: number;
  high: number;
} {
  return { low: Math.round(lowCounts) - 1, high: Math.round(highCounts) };
}
