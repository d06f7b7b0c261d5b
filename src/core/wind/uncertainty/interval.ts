import { badReading, requireAtLeast } from '../refusal.ts';
import { studentFactor } from './student.ts';

/** A range that holds the true value in 95 of 100 cases. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % interval of a share that groups of a record gave, kept within 0..1 (Wilson's form).
 *
 * The number of readings that enters is the number of independent ones that would scatter as the groups do.
 * A share of 0 or 1, or one that never varied, is taken to rest on as many readings as there are blocks.
 *
 * @param share - [-], 0..1
 * @param standardError - As `jackknifeError` gives it; `null` gives no interval. [-], ≥ 0
 * @param support - Blocks that hold readings, and groups they were dealt to. [-]
 * @returns `null` with fewer than two groups. [-]
 * @throws `wind/bad-reading` when the share is not in 0..1 or the error is negative.
 * @source E. B. Wilson, J. Amer. Stat. Assoc. 22 (1927) 209; with an effective number of readings and
 *   Student's factor as in E. L. Korn, B. I. Graubard, Survey Methodology 24 (1998) 193; value from memory.
 * @check src/core/wind/uncertainty/interval.test.ts
 */
export function shareInterval(
  share: number,
  standardError: number | null,
  support: { readonly blocks: number; readonly groups: number },
): Interval | null {
  if (!(share >= 0 && share <= 1)) throw badReading('shareInterval(share)', share, '0..1 [-]');
  if (standardError === null || support.groups < 2) return null;
  requireAtLeast(standardError, 0, 'shareInterval(standardError)', '[-]');
  const t2 = studentFactor(support.groups - 1) ** 2;
  const scatter = share * (1 - share);
  const readings = standardError > 0 && scatter > 0 ? scatter / standardError ** 2 : support.blocks;
  const centre = (share + t2 / (2 * readings)) / (1 + t2 / readings);
  const half = Math.sqrt(t2 * (scatter / readings + t2 / (4 * readings ** 2))) / (1 + t2 / readings);
  return {
    low: share === 0 ? 0 : Math.max(0, centre - half),
    high: share === 1 ? 1 : Math.min(1, centre + half),
  };
}
