import { badReading, unequalLengths } from '../refusal.ts';

/**
 * Standard error of any figure from what it would be without each group of a record in turn.
 *
 * Groups may differ in size. The groups, not the readings, count as independent, so that a year at 1 Hz does
 * not pretend to thirty million independent readings.
 *
 * @param whole - The figure from all groups. [any unit]
 * @param without - The figure with group j left out. [same unit], n ≥ 2 for an answer
 * @param sizes - Readings or weight of each group. [-], n the same, each > 0
 * @returns `null` with fewer than two groups, where nothing can be said. [same unit]
 * @throws `wind/unequal-lengths`; `wind/bad-reading` when a size is not above 0.
 * @source F. M. T. A. Busing, E. Meijer, R. van der Leeden, Statistics and Computing 9 (1999) 3–8
 *   (delete-m_j jackknife); value from memory.
 * @check src/core/wind/uncertainty/jackknife.test.ts
 */
export function jackknifeError(
  whole: number,
  without: readonly number[],
  sizes: readonly number[],
): number | null {
  if (without.length !== sizes.length) {
    throw unequalLengths('jackknifeError(without, sizes)', without.length, sizes.length);
  }
  const bad = sizes.find((size) => !(size > 0 && Number.isFinite(size)));
  if (bad !== undefined) throw badReading('jackknifeError(sizes)', bad, 'a finite weight above 0');
  const groups = sizes.length;
  if (groups < 2) return null;
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const centre = without.reduce((sum, figure, j) => sum - (1 - sizes[j]! / total) * figure, groups * whole);
  const variance = without.reduce((sum, figure, j) => {
    const ratio = total / sizes[j]!;
    const pseudo = ratio * whole - (ratio - 1) * figure;
    return sum + (pseudo - centre) ** 2 / (ratio - 1);
  }, 0);
  return Math.sqrt(variance / groups);
}
