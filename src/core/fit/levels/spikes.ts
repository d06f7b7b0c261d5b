import type { Repair, Stretch } from '../reading/recording.ts';
import { medianOf } from './spread.ts';
import { runsOf, type Cut } from './switching.ts';

/** Runs shorter than this cannot be told from a spike. [samples] */
const LEAST_RUN = 5;

/**
 * Stretches with single wild samples put back between their neighbours, each listed.
 *
 * A sample is wild when it stands on the other side of both neighbours, which agree, in a column whose runs are long.
 *
 * @param cuts - Where each column is cut; `null` for one that never changes.
 */
export function withoutSpikes(
  stretches: readonly Stretch[],
  cuts: readonly (Cut | null)[],
): { stretches: Stretch[]; repairs: Repair[] } {
  const repairs: Repair[] = [];
  const isSlow = cuts.map((cut, c) => {
    if (!cut) return true;
    const lengths = stretches.flatMap(({ rows }) =>
      runsOf(
        rows.map((row) => row[c]!),
        cut,
      ).map(({ from, to }) => to - from),
    );
    return medianOf(lengths.filter((length) => length > 1)) >= LEAST_RUN;
  });
  const cleaned = stretches.map((stretch) => {
    const rows = stretch.rows.map((row) => [...row]);
    for (let i = 1; i + 1 < rows.length; i++) {
      for (const [c, cut] of cuts.entries()) {
        if (!isSlow[c] || !isWild(rows[i - 1]![c]!, rows[i]![c]!, rows[i + 1]![c]!, cut)) continue;
        const what = `Took one wild sample of column ${c}, ${rows[i]![c]} counts, as its neighbours'.`;
        repairs.push({ file: stretch.file, line: stretch.fromLine + i, kind: 'spike', what });
        rows[i]![c] = (rows[i - 1]![c]! + rows[i + 1]![c]!) / 2;
      }
    }
    return { ...stretch, rows };
  });
  return { stretches: cleaned, repairs };
}

function isWild(before: number, now: number, after: number, cut: Cut | null): boolean {
  if (!cut) return false;
  const side = (counts: number): number => (counts >= cut.highCounts ? 1 : counts <= cut.lowCounts ? -1 : 0);
  return side(now) !== 0 && side(now) === -side(before) && side(before) === side(after);
}
