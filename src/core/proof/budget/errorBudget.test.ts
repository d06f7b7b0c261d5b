import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LOG_HEAD } from '../../../../test/support/handHead.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { ReadStretch } from '../proof.ts';
import type { BuildFaults } from '../turn/conditions.ts';
import { exactTurn } from '../turn/exactTurn.ts';
import { BUDGET_SIGMA } from './budgetItem.ts';
import { errorBudget } from './errorBudget.ts';
import type { BudgetItemName } from './budgetItem.ts';

const RATE = 40;
/** One track of two halves, so that every edge is the innermost channel's. */
const disc = handDisc({
  family: 'natural-binary',
  positions: 2,
  firstRadiusMm: 20,
  process: { edgeSdMm: 0.1, boreSdMm: 0.12, windowGrowthMm: 0.2 },
});
const SPREAD = 0.2;
const head = handHead(disc, {
  spec: {
    ...LOG_HEAD,
    detector: { ...LOG_HEAD.detector, spread: SPREAD },
    aperture: { shape: 'round', diameterMm: 1.6 },
    tangentialSdMm: 0.15,
    radialSdMm: 0.2,
    tiltSdDeg: 2,
    shaftPlaySdMm: 0.05,
    northSdDeg: 0.7,
    daylightShare: 0.01,
  },
  circuit: { hysteresisCounts: 40, noiseCounts: 3, resistorTolerancePercent: 5, thresholds: 'shared' },
});
const budget = errorBudget(head, RATE);
const itemDeg = (name: BudgetItemName): number => budget.items.find(({ item }) => item === name)!.maxDeg;

const startsOf = (stretches: readonly ReadStretch[]): number[] =>
  stretches.map(({ fromDeg }) => fromDeg).sort((a, b) => a - b);

/** Farthest that any edge moves from where the drawing has it, halfway between both ways round. [deg] */
function farthestMove(faults: BuildFaults, design: HeadPlan = head): number {
  const [before, after] = [exactTurn(design), exactTurn(design, faults)];
  const farthest = (way: 'growing' | 'falling'): number => {
    const were = startsOf(before[way]);
    return Math.max(...startsOf(after[way]).map((at) => Math.min(...were.map((was) => apartDeg(at, was)))));
  };
  return (farthest('growing') + farthest('falling')) / 2;
}

/** How far edges move on average over both edges and both ways round, as thresholds move them. [deg] */
function meanMove(faults: BuildFaults): number {
  const [before, after] = [exactTurn(head), exactTurn(head, faults)];
  const moves = (['growing', 'falling'] as const).flatMap((way) => {
    const were = startsOf(before[way]);
    return startsOf(after[way]).map((at) => Math.min(...were.map((was) => apartDeg(at, was))));
  });
  return moves.reduce((sum, move) => sum + move, 0) / moves.length;
}

/** Round the whole turn a cause that points one way is largest somewhere: the largest over directions. */
function farthestAround(faultsAt: (direction: number) => BuildFaults): number {
  let most = 0;
  for (let at = 0; at < 360; at += 5) most = Math.max(most, farthestMove(faultsAt((at * Math.PI) / 180)));
  return most;
}

const SD = BUDGET_SIGMA;

describe('an error budget', () => {
  it.each<[BudgetItemName, () => number]>([
    ['edge', () => farthestMove({ edgeMm: () => SD * 0.1 })],
    [
      'bore',
      () => farthestAround((at) => ({ boreMm: [SD * 0.12 * Math.cos(at), SD * 0.12 * Math.sin(at)] })),
    ],
    ['tilt', () => farthestAround((at) => ({ tiltDeg: [SD * 2 * Math.cos(at), SD * 2 * Math.sin(at)] }))],
    ['tangential', () => farthestMove({ alongMm: [SD * 0.15] })],
    ['radial', () => farthestMove({ acrossMm: [-SD * 0.2] })],
    [
      'shaft',
      () => farthestAround((at) => ({ shaftMm: [SD * 0.05 * Math.cos(at), SD * 0.05 * Math.sin(at)] })),
    ],
    ['north', () => farthestMove({ northDeg: SD * 0.7 })],
    [
      'sensor',
      () => bothWays((factor) => ({ parts: [factor] }), Math.exp(SD * Math.sqrt(Math.log1p(SPREAD ** 2)))),
    ],
    ['resistor', () => bothWays((factor) => ({ resistors: [factor] }), 1 + SD * 0.025)],
    [
      'threshold',
      () =>
        Math.max(
          ...[1, -1].map((sign) =>
            meanMove({ thresholdCounts: [sign * SD * Math.hypot(3, 1 / Math.sqrt(12))] }),
          ),
        ),
    ],
    // 0.3 % a kelvin from -10 to 40 degrees, thresholds being measured at 20.
    ['temperature', () => Math.max(...[1 - 0.09, 1 + 0.06].map((drift) => meanMove({ drift })))],
    // 8766 h of 50,000 h to 70 % dim the light to 0.9394; R goes with the light to the power of -0.7.
    ['lamp-ageing', () => meanMove({ drift: (0.7 ** (8766 / 50_000)) ** -0.7 })],
    ['creep', () => bothWays((drift) => ({ drift }), 1.2)],
    ['daylight', () => meanMove({ addedLight: -0.01 })],
  ])('tells of %s what that cause alone does in an exact turn', (name, alone) => {
    const [told, done] = [itemDeg(name), alone()];
    expect(done).toBeGreaterThan(0);
    // What stands across the track moves an edge by what it is off already: growth and threshold are added there as lengths.
    expect(Math.abs(told - done) / done).toBeLessThan(name === 'radial' ? 0.05 : 0.02);
  });

  it('tells of growth, threshold and hysteresis where edges stand that were drawn at 0 and 180 degrees', () => {
    const { growing, falling } = exactTurn(head);
    const edges = [...startsOf(growing), ...startsOf(falling)];
    const mean =
      edges.reduce((sum, at) => sum + Math.min(apartDeg(at, 0), apartDeg(at, 180)), 0) / edges.length;
    expect(itemDeg('growth') + itemDeg('edge-bias')).toBeCloseTo(mean, 2);
    const [first] = startsOf(growing);
    const apart = Math.min(...startsOf(falling).map((at) => apartDeg(at, first!)));
    expect(itemDeg('hysteresis')).toBeCloseTo(apart / 2, 2);
  });

  it('tells half a step, and that of 32 positions the rms is 3.2476 degrees', () => {
    expect(itemDeg('quantisation')).toBe(90);
    expect(Math.abs(11.25 / Math.sqrt(12) - 3.2476)).toBeLessThan(5e-5);
  });

  it('tells of lag and loop what the speed limit rests on', () => {
    expect(itemDeg('lag')).toBeCloseTo((RATE * head.speed.lagMs) / 1000, 12);
    expect(itemDeg('read-loop')).toBeCloseTo((RATE * head.speed.loopMs) / 1000, 12);
  });

  it('is sorted, and names its worst item', () => {
    const sizes = budget.items.map(({ maxDeg }) => maxDeg);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    const [worst] = budget.items.filter(({ item }) => item !== 'quantisation');
    expect(budget.worst).toContain(`Your worst item is ${worst!.title.toLowerCase()}`);
  });

  it('adds fixed items up and scattered ones as squares', () => {
    const of = (kind: string): number[] =>
      budget.items.filter((item) => item.kind === kind).map((i) => i.maxDeg);
    const fixed = of('fixed').reduce((sum, value) => sum + value, 0);
    // Here windows grow and thresholds widen them: the two add up, as lengths.
    expect(budget.combinedDeg).toBeCloseTo(fixed + Math.hypot(...of('scattered')), 2);
    const narrow = handHead(
      handDisc({ family: 'natural-binary', positions: 2, process: { windowGrowthMm: -0.6 } }),
      {
        spec: { ...LOG_HEAD, aperture: { shape: 'slit', widthMm: 0.6, lengthMm: 2 } },
      },
    );
    const taken = errorBudget(narrow, 0);
    const fixedOf = taken.items
      .filter(({ kind }) => kind === 'fixed')
      .reduce((sum, item) => sum + item.maxDeg, 0);
    expect(taken.combinedDeg).toBeLessThan(fixedOf);
  });
});

function bothWays(faultsOf: (factor: number) => BuildFaults, factor: number): number {
  return Math.max(meanMove(faultsOf(factor)), meanMove(faultsOf(1 / factor)));
}
