import type { MotionLaw } from './motionFilter.ts';

/** How the hand moves, and how far single edges stand off their places. */
export interface Law {
  readonly motion: MotionLaw;
  /** Standard deviation of an edge's own place. [mm] */
  readonly edgeSdMm: number;
}

/** Wanders tried first, as powers of ten, and how finely they are narrowed. */
const FIRST_WANDERS: Readonly<Record<2 | 3, readonly number[]>> = {
  2: [-8, -7, -6, -5, -4, -3, -2],
  3: [-14, -12, -10, -8, -6, -4],
};
const FIRST_EDGES_MM = [0.01, 0.04, 0.12, 0.35] as const;
const NARROWINGS = 3;
/** Edges are never taken to be better than this. [mm] */
const LEAST_EDGE_MM = 0.004;

/** How likely the recording is under a law, as a logarithm. */
export type Score = (law: Law) => number;

interface Place {
  readonly order: 2 | 3;
  readonly wander: number;
  readonly edge: number;
  readonly score: number;
}

const lawAt = ({ order, wander, edge }: Omit<Place, 'score'>): Law => ({
  motion: { order, wander: 10 ** wander },
  edgeSdMm: Math.max(LEAST_EDGE_MM, 10 ** edge),
});

/** The best of a place and those around it. */
function narrowed(start: Place, steps: { wander: number; edge: number }, score: Score): Place {
  let best = start;
  for (const w of [-1, 0, 1]) {
    for (const e of [-1, 0, 1]) {
      if (w === 0 && e === 0) continue;
      const at = {
        order: start.order,
        wander: start.wander + w * steps.wander,
        edge: start.edge + e * steps.edge,
      };
      const now = score(lawAt(at));
      if (now > best.score) best = { ...at, score: now };
    }
  }
  return best;
}

/**
 * The law under which the recording is likeliest: the two orders of smoothness, wander and edge scatter are searched on
 * a coarse grid that is then narrowed.
 *
 * @source Maximum likelihood through the innovations of the filter: Harvey 1989, ch. 3.4 (value from memory).
 */
export function likeliestLaw(score: Score): Law {
  let best: Place = { order: 2, wander: -4, edge: -1, score: -Infinity };
  for (const order of [2, 3] as const) {
    for (const wander of FIRST_WANDERS[order]) {
      for (const edge of FIRST_EDGES_MM.map(Math.log10)) {
        const now = score(lawAt({ order, wander, edge }));
        if (now > best.score) best = { order, wander, edge, score: now };
      }
    }
  }
  const wide = best.order === 2 ? 0.5 : 1;
  for (let round = 0; round < NARROWINGS; round++) {
    best = narrowed(best, { wander: wide / 2 ** round, edge: 0.25 / 2 ** round }, score);
  }
  return lawAt(best);
}

/** The likeliest law near one that is known, edges looked at over their whole range: for a dearer, truer score. */
export function likeliestNear({ motion, edgeSdMm }: Law, score: Score): Law {
  const { order } = motion;
  let best: Place = {
    order,
    wander: Math.log10(motion.wander),
    edge: Math.log10(edgeSdMm),
    score: -Infinity,
  };
  const { wander: middle } = best;
  for (const wander of [middle - 1, middle, middle + 1]) {
    for (const edge of [...FIRST_EDGES_MM.map(Math.log10)]) {
      const now = score(lawAt({ order, wander, edge }));
      if (now > best.score) best = { order, wander, edge, score: now };
    }
  }
  for (const step of [0.5, 0.25]) best = narrowed(best, { wander: step, edge: step / 2 }, score);
  return lawAt(best);
}
