import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** A repeatable source of draws: same seed, same draws, in Node and in the browser. */
export interface Random {
  /** Even draw in the open interval (0, 1). [-] */
  uniform(): number;
  /** Draw from the normal distribution of mean 0 and standard deviation 1. [-] */
  normal(): number;
}

/**
 * Repeatable draws from a seed.
 *
 * @param seed - Any whole number; equal seeds give equal draws. [-]
 * @returns A source whose normal draws invert one uniform each, so streams stay in step.
 */
export function seededRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  // 32 random bits centred in their cell: never 0 and never 1, where the normal quantile is infinite.
  const uniform = (): number => ((generator.next() >>> 0) + 0.5) / 4294967296;
  return { uniform, normal: () => normalQuantile(uniform(), 0, 1) };
}
