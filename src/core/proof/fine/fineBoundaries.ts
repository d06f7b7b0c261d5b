import { boundaries } from '../../codes/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { TurnModel } from '../turn/turnModel.ts';

/** The one channel that changes between two positions, and how its edge is to be read there. */
export interface FineBoundary {
  /** Where the boundary is drawn. [deg] */
  readonly atDeg: number;
  readonly channel: number;
  /** Index of the edge among those the channel sees, and +1 where a window begins with the disc angle growing, -1 where it ends. */
  readonly edge: number;
  readonly gain: 1 | -1;
}

/** Boundary before each position, or why not every boundary has one channel to itself. */
export type FineBoundaries =
  | { readonly boundaries: readonly FineBoundary[]; readonly why: null }
  | { readonly boundaries: null; readonly why: string };

/**
 * The channel in mid-edge at each boundary of a code that changes one channel a step.
 *
 * @returns n = positions, boundary k lying before position k.
 */
export function fineBoundaries(head: HeadPlan, model: TurnModel): FineBoundaries {
  const { code } = head.disc;
  if (head.marks !== null) {
    return {
      boundaries: null,
      why: 'Between three marks a reading tells the colour, not how far the edge has come.',
    };
  }
  if (code.strobe !== null || !code.absolute) {
    return {
      boundaries: null,
      why: 'This code cannot be read by itself at every angle, so no step can be told finer.',
    };
  }
  const found = boundaries(code);
  const shared = found.find(({ changing }) => changing.length > 1);
  if (shared || found.length !== code.positions) {
    const where = shared ? `at ${shared.positionBefore}|${shared.positionAfter}` : 'inside a step';
    return {
      boundaries: null,
      why: `Finer than a step needs a code that changes exactly one channel a step; this one does not ${where}. Set disc.code to reflected-gray.`,
    };
  }
  const list = new Array<FineBoundary>(code.positions);
  for (const { angleDeg, positionAfter, changing } of found) {
    const channel = changing[0]!;
    const { seen, angleDeg: stands } = model.channels[channel]!;
    const apart = (edge: number): number =>
      Math.abs(((((edge - angleDeg - stands) % 360) + 540) % 360) - 180);
    const edge = seen.edgesDeg.reduce(
      (best, at, i) => (apart(at) < apart(seen.edgesDeg[best]!) ? i : best),
      0,
    );
    list[positionAfter] = { atDeg: angleDeg, channel, edge, gain: seen.gains[edge]! > 0 ? 1 : -1 };
  }
  return { boundaries: list, why: null };
}
