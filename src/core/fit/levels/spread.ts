/** Middle value of a list; 0 for an empty one. */
export function medianOf(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Standard deviation that a few wild values do not move: 1.4826 median distances from the median, as for a normal one. */
export function sturdySigma(values: readonly number[]): number {
  const middle = medianOf(values);
  return 1.4826 * medianOf(values.map((value) => Math.abs(value - middle)));
}

/**
 * Where values lie densest: the half of them that spans least, and of that half again, until two or three are left.
 *
 * @param sorted - Rising. n ≥ 1
 * @source Half-sample mode: Robertson & Cryer, J. Am. Stat. Assoc. 69 (1974) 1012, value from memory.
 */
export function densest(sorted: Float64Array): number {
  let from = 0;
  let count = sorted.length;
  while (count > 3) {
    const half = Math.ceil(count / 2);
    let best = from;
    let width = Infinity;
    for (let i = from; i + half <= from + count; i++) {
      const span = sorted[i + half - 1]! - sorted[i]!;
      if (span < width) [width, best] = [span, i];
    }
    // Counts are whole numbers: a span of nothing is all one value.
    if (width === 0) return sorted[best]!;
    from = best;
    count = half;
  }
  let sum = 0;
  for (let i = from; i < from + count; i++) sum += sorted[i]!;
  return sum / count;
}
