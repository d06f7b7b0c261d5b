import { seededRandom, wrapDegrees } from '../../src/core/units/index.ts';

/** One invented sample. [ms UTC], [deg], [m/s] */
export interface InventedSample {
  readonly atMs: number;
  readonly headingDeg: number;
  readonly speedMPerS: number;
}

/**
 * Invented wind whose direction and speed wander and come back, with a memory of `memory` samples: each sample keeps
 * exp(-1/memory) of the one before. Long-run mean 230° and 5 m/s, spread of direction 70°.
 */
export function windSeries(choice: {
  readonly seed: number;
  readonly count: number;
  readonly intervalMs: number;
  readonly memory: number;
}): InventedSample[] {
  const random = seededRandom(choice.seed);
  const keep = Math.exp(-1 / choice.memory);
  const fresh = Math.sqrt(1 - keep ** 2);
  let [turn, gust] = [random.normal(), random.normal()];
  return Array.from({ length: choice.count }, (_, i) => {
    turn = keep * turn + fresh * random.normal();
    gust = keep * gust + fresh * random.normal();
    return {
      atMs: (i + 1) * choice.intervalMs,
      headingDeg: wrapDegrees(230 + 70 * turn),
      speedMPerS: Math.max(0, 5 + 2.5 * gust),
    };
  });
}
