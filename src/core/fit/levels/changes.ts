import type { Stretch } from '../reading/recording.ts';
import type { ColumnLevels } from './channelLevels.ts';
import { changesOf, type Change, type Cut } from './switching.ts';

/** Where a column that changes is cut; `null` for one that never does. */
export function cutOf({
  lowCounts,
  highCounts,
  lowPlateau,
  highPlateau,
  noiseCounts,
}: ColumnLevels): Cut | null {
  const swing = highPlateau - lowPlateau;
  return swing > 0 ? { lowCounts, highCounts, swing, sigma: noiseCounts } : null;
}

/** Every change of every column, stretch by stretch in order of time. */
export function allChanges(stretches: readonly Stretch[], levels: readonly ColumnLevels[]): Change[][] {
  const cuts = levels.map(cutOf);
  return stretches.map((stretch, index) =>
    cuts
      .flatMap((cut, column) => (cut ? changesOf(stretch, index, column, cut) : []))
      .sort((a, b) => a.timeMs - b.timeMs),
  );
}

/** What every column reads at the first sample of a stretch. */
export function firstBits(stretch: Stretch, levels: readonly ColumnLevels[]): (0 | 1)[] {
  return levels.map(({ lowCounts, highCounts }, c) =>
    stretch.rows[0]![c]! > (lowCounts + highCounts) / 2 ? 1 : 0,
  );
}

/** Two columns are tied when they read the same nearly always although either changes. [share of samples]; own choice */
const TIED_SHARE = 0.97;

/**
 * Columns that always move together with an earlier one, alike or opposite, with that earlier one.
 *
 * No code has two channels that do: one wire has found its way onto two inputs, or an input floats beside another.
 */
export function tiedColumns(
  stretches: readonly Stretch[],
  levels: readonly ColumnLevels[],
): Map<number, number> {
  const bits = levels.map((level, c) => {
    const middle = (level.lowCounts + level.highCounts) / 2;
    return level.highPlateau === level.lowPlateau
      ? null
      : stretches.flatMap(({ rows }) => rows.map((row) => row[c]! > middle));
  });
  const tied = new Map<number, number>();
  for (const [b, second] of bits.entries()) {
    for (let a = 0; a < b && second; a++) {
      const first = bits[a];
      if (!first || tied.has(a)) continue;
      const same = first.filter((bit, i) => bit === second[i]).length / first.length;
      if (same >= TIED_SHARE || same <= 1 - TIED_SHARE) {
        tied.set(b, a);
        break;
      }
    }
  }
  return tied;
}
