import type { Level } from '../../codes/index.ts';
import type { Thresholds } from '../circuit/thresholds.ts';
import { pureShares, rememberedChanges, type MarkChange, type MarkReader } from './markReader.ts';

/**
 * Reader of three greys by two pairs of thresholds.
 *
 * On the way between black and white it passes the middle grey, and reads it.
 *
 * @param countsOf - Counts of a light level, rising or falling evenly with it. [counts] of [-]
 * @param lights - Light of level 0, 1 and 2, ascending. [-], n = 3
 * @param pairs - Thresholds between level 0 and 1, and between 1 and 2, in the order of the levels. [counts], n = 2
 * @check src/core/head/marks/marks.test.ts (a fine scan of blends)
 */
export function greyReader(
  countsOf: (light: number) => number,
  lights: readonly number[],
  pairs: readonly [Thresholds, Thresholds],
): MarkReader {
  const way = countsOf(lights[2]!) >= countsOf(lights[0]!) ? 1 : -1;
  // Turned so that more always means lighter.
  const up = pairs.map(({ lowCounts, highCounts }) => (way > 0 ? highCounts : -lowCounts));
  const down = pairs.map(({ lowCounts, highCounts }) => (way > 0 ? lowCounts : -highCounts));
  const value = (shares: readonly number[]): number =>
    way * countsOf(shares.reduce((sum, share, level) => sum + share * lights[level]!, 0));
  const judge = (shares: readonly number[]): Level | null => {
    const seen = value(shares);
    if (seen >= up[1]!) return 2;
    if (seen >= up[0]! && seen <= down[1]!) return 1;
    return seen <= down[0]! ? 0 : null;
  };
  const changes = (from: Level, to: Level): MarkChange[] => {
    const [start, end] = [value(pureShares(from)), value(pureShares(to))];
    const share = (counts: number): number => (counts - start) / (end - start);
    const passed: MarkChange[] =
      end > start
        ? [
            { share: share(up[0]!), level: 1 },
            { share: share(up[1]!), level: 2 },
          ]
        : [
            { share: share(down[1]!), level: 1 },
            { share: share(down[0]!), level: 0 },
          ];
    const between = passed.filter((change) => change.share >= 0 && change.share <= 1);
    const first = judge(pureShares(from));
    return first === null ? between : [{ share: 0, level: first }, ...between];
  };
  return rememberedChanges({ judge, changes });
}
