import { describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { NOMINAL_MARKS, type HeadPlan } from '../../head/index.ts';
import { turnBetween } from '../../units/index.ts';
import { causeSizes } from '../builds/draws.ts';
import type { BuildFaults } from '../turn/conditions.ts';
import { exactTurn } from '../turn/exactTurn.ts';
import { BUDGET_SIGMA } from './budgetItem.ts';
import { circuitCauses, type CircuitChange } from './circuitItems.ts';
import { errorBudget } from './errorBudget.ts';

/** How far the edge at each boundary moves from where the drawing has it, one way round. [deg] by boundary */
function movesOf(head: HeadPlan, faults: BuildFaults, way: 'growing' | 'falling'): Map<number, number> {
  const { positions } = head.disc.code;
  const were = exactTurn(head)[way].map(({ fromDeg }) => fromDeg);
  return new Map(
    exactTurn(head, faults)[way].map(({ fromDeg }): [number, number] => {
      const moves = were.map((was) => turnBetween(was, fromDeg));
      const move = moves.reduce((least, each) => (Math.abs(each) < Math.abs(least) ? each : least));
      return [Math.round(((fromDeg - move) * positions) / 360) % positions, move];
    }),
  );
}

/** Farthest that an edge moves halfway between both ways round. [deg] */
function farthestMove(head: HeadPlan, faults: BuildFaults): number {
  const falling = movesOf(head, faults, 'falling');
  const both = [...movesOf(head, faults, 'growing')].map(
    ([at, move]) => (move + (falling.get(at) ?? move)) / 2,
  );
  return Math.max(...both.map(Math.abs));
}

/** One change of every channel, as a build has it. */
function faultsOf({ channels, marks }: HeadPlan, change: CircuitChange): BuildFaults {
  const every = <T>(value: T): T[] => channels.map(() => value);
  if (marks) return { marks: every({ ...NOMINAL_MARKS, ...change.marks }) };
  const { part = 1, resistor = 1, thresholdCounts = 0, drift = 1, addedLight = 0 } = change.channel;
  return {
    ...{ parts: every(part), resistors: every(resistor), thresholdCounts: every(thresholdCounts) },
    ...{ drift, addedLight },
  };
}

describe.each(['jetty', 'dome', 'sluice', 'tricolour'])('the budget of the example %s', (name) => {
  const head = plannedHead(exampleInstrument(name));
  const budget = errorBudget(head, 30);
  const told = (item: string): number => budget.items.find((each) => each.item === item)?.maxDeg ?? Infinity;

  it.each(circuitCauses(head).map((cause) => [cause.item, cause] as const))(
    'tells of %s what that cause alone does in an exact turn',
    (item, { changes, together }) => {
      const moves = changes.map((change) => farthestMove(head, faultsOf(head, change)));
      const done = together ? Math.hypot(...moves) : Math.max(0, ...moves);
      expect(Math.abs(told(item) - done)).toBeLessThan(0.05 * done + 0.02);
    },
  );

  const sizes = causeSizes(head, null);
  const around = (of: (x: number, y: number) => BuildFaults): number =>
    Math.max(
      ...Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12).map((at) =>
        farthestMove(head, of(BUDGET_SIGMA * Math.cos(at), BUDGET_SIGMA * Math.sin(at))),
      ),
    );
  it.each<[string, () => number]>([
    ['edge', () => farthestMove(head, { edgeMm: () => BUDGET_SIGMA * sizes.edgeMm })],
    ['bore', () => around((x, y) => ({ boreMm: [x * sizes.boreMm, y * sizes.boreMm] }))],
    ['tilt', () => around((x, y) => ({ tiltDeg: [x * sizes.tiltDeg, y * sizes.tiltDeg] }))],
    ['shaft', () => around((x, y) => ({ shaftMm: [x * sizes.shaftMm, y * sizes.shaftMm] }))],
    [
      'tangential',
      () => farthestMove(head, { alongMm: head.channels.map(() => BUDGET_SIGMA * sizes.alongMm) }),
    ],
    ['north', () => farthestMove(head, { northDeg: BUDGET_SIGMA * sizes.northDeg })],
  ])('tells of %s what that cause alone does in an exact turn', (item, alone) => {
    const done = alone();
    expect(Math.abs(told(item) - done)).toBeLessThan(0.05 * done + 0.02);
  });
});
