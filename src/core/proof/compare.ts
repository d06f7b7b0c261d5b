import type { HeadPlan } from '../head/index.ts';
import { addTally, emptyTally } from './builds/tally.ts';
import { batchCount, buildBatch, buildStatistics, type BuildRequest } from './builds/virtualBuilds.ts';
import { Z95 } from './builds/wilson.ts';
import type { BuildStatistics } from './proof.ts';

/** Two designs made in the same builds: the same draws for the same cause, channel after channel and edge after edge. */
export interface Comparison {
  readonly first: BuildStatistics;
  readonly second: BuildStatistics;
  /** Builds that are good in one and not in the other. [-] */
  readonly onlyFirstGood: number;
  readonly onlySecondGood: number;
  /** Yield of the first less that of the second, with the range that holds the true one in 95 of 100 cases. [-] */
  readonly yieldDifference: { readonly value: number; readonly low: number; readonly high: number };
}

/**
 * Holds two designs against each other on common random numbers, so that luck favours neither.
 *
 * @param accuraciesDeg - Largest error of a good build of each. [deg]
 * @throws `proof/builds-out-of-range`, `proof/seed-not-whole`, `proof/too-many-channels`
 * @source difference of paired shares: D. G. Bonett & R. M. Price, J. Educ. Behav. Stat. 37 (2012) 479; one build more is
 * counted for each.
 * @check src/core/proof/compare.test.ts
 */
export function compareDesigns(
  first: HeadPlan,
  second: HeadPlan,
  request: BuildRequest,
  accuraciesDeg: readonly [number, number] = [request.accuracyDeg, request.accuracyDeg],
): Comparison {
  const made = [first, second].map((head, i) => {
    const own = { ...request, accuracyDeg: accuraciesDeg[i]! };
    const good: boolean[] = [];
    const tally = emptyTally();
    for (let batch = 0; batch < batchCount(own); batch++) {
      addTally(
        tally,
        buildBatch(head, own, batch, (isGood) => good.push(isGood)),
      );
    }
    return { good, statistics: buildStatistics(tally, own) };
  });
  const [a, b] = made as [(typeof made)[0], (typeof made)[0]];
  const onlyFirstGood = a.good.filter((isGood, i) => isGood && !b.good[i]).length;
  const onlySecondGood = b.good.filter((isGood, i) => isGood && !a.good[i]).length;
  const n = request.builds;
  const [p, q] = [(onlyFirstGood + 1) / (n + 2), (onlySecondGood + 1) / (n + 2)];
  const half = Z95 * Math.sqrt((p + q - (p - q) ** 2) / (n + 2));
  return {
    first: a.statistics,
    second: b.statistics,
    onlyFirstGood,
    onlySecondGood,
    yieldDifference: {
      value: (onlyFirstGood - onlySecondGood) / n,
      low: Math.max(-1, p - q - half),
      high: Math.min(1, p - q + half),
    },
  };
}
