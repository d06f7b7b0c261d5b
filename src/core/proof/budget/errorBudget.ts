import type { HeadPlan } from '../../head/index.ts';
import { radToDeg, showDegrees, showMm, showNumber } from '../../units/index.ts';
import { causeSizes } from '../builds/draws.ts';
import { BUDGET_SIGMA, type BudgetItem, type BudgetItemName, type ErrorBudget } from './budgetItem.ts';
import { circuitItems } from './circuitItems.ts';
import { switchPlaces } from './switchShifts.ts';

/**
 * What puts a reading out, cause by cause in closed form, largest first.
 *
 * Every length is an angle at the innermost channel, where a millimetre is the most degrees.
 *
 * @param head - The design.
 * @param rateDegPerS - Turn rate that is asked of it. [deg/s]
 * @source each item names its own.
 * @check src/core/proof/budget/errorBudget.test.ts (each cause alone in an exact turn), src/core/proof/budget/unseenDesigns.test.ts
 */
export function errorBudget(head: HeadPlan, rateDegPerS: number): ErrorBudget {
  const edges = edgeItems(head);
  const items = [
    ...edges.items,
    ...speedItems(head, rateDegPerS),
    ...placeItems(head),
    ...circuitItems(head),
  ].filter(({ maxDeg }) => Number.isFinite(maxDeg));
  items.sort((a, b) => b.maxDeg - a.maxDeg);
  // Windows that come out narrower and thresholds that widen them take from each other.
  const fixed = items.filter(
    ({ item, kind }) => kind === 'fixed' && item !== 'growth' && item !== 'edge-bias',
  );
  const scattered = items.filter(({ kind }) => kind === 'scattered').map(({ maxDeg }) => maxDeg);
  return {
    items,
    worst: worstOf(items),
    combinedDeg:
      edges.togetherDeg + fixed.reduce((sum, { maxDeg }) => sum + maxDeg, 0) + Math.hypot(...scattered),
  };
}

/** The largest item a maker can do something about: a step itself is only told when nothing else counts. */
function worstOf(items: readonly BudgetItem[]): string {
  const [first] = items.filter(({ item, maxDeg }) => item !== 'quantisation' && maxDeg > 0);
  const [quantisation] = items.filter(({ item }) => item === 'quantisation');
  const step = quantisation ? ` Half a step alone is ${showDegrees(quantisation.maxDeg)}.` : '';
  if (!first) return `Nothing puts a reading out but the step itself.${step}`;
  return `Your worst item is ${first.title.toLowerCase()}: up to ${showDegrees(first.maxDeg)}.${step}`;
}

/** Radius of the innermost channel. [mm] */
function innermostMm({ channels }: HeadPlan): number {
  return Math.min(...channels.map(({ radiusMm }) => radiusMm));
}

/** Angle of a sideways length, infinite where an edge never switches. [deg] @source derived: asin(length/radius). */
function angleOf(lengthMm: number, radiusMm: number): number {
  if (!Number.isFinite(lengthMm)) return Infinity;
  return radToDeg(Math.asin(Math.min(1, Math.abs(lengthMm) / radiusMm)));
}

const DERIVED = 'derived; plane geometry';

function fixedItem(
  item: BudgetItemName,
  title: string,
  maxDeg: number,
  [formula, source]: readonly [string, string],
): BudgetItem {
  return { item, title, kind: 'fixed', maxDeg, formula, source };
}

/** What moves every edge alike, and the growth of windows and the bias of thresholds together. [deg] */
function edgeItems(head: HeadPlan): { readonly items: BudgetItem[]; readonly togetherDeg: number } {
  const { disc, levels } = head;
  const radius = innermostMm(head);
  const { windowGrowthMm } = disc.spec.process;
  const { biasMm, wayMm } = switchPlaces(head, radius);
  const light = (100 * (levels.risingLight + levels.fallingLight)) / 2;
  const where = head.marks
    ? 'where one mark turns into the next'
    : `a channel changes at ${showNumber(light, 1)} % light`;
  const { positions } = disc.code;
  const together = angleOf(windowGrowthMm / 2 + biasMm, radius);
  return {
    togetherDeg: Number.isFinite(together) ? together : 0,
    items: [
      fixedItem('quantisation', 'Half a step', 180 / positions, [
        `180/${positions}; over the turn 1/√12 of a step`,
        'uniform distribution, q/√12',
      ]),
      fixedItem('growth', 'Windows that come out wider or narrower', angleOf(windowGrowthMm / 2, radius), [
        `half of ${showMm(Math.abs(windowGrowthMm))} an edge at ${showMm(radius)}`,
        DERIVED,
      ]),
      fixedItem('edge-bias', 'Thresholds away from half light', angleOf(biasMm, radius), [
        `${where}, ${showMm(Math.abs(biasMm))} from the edge, at ${showMm(radius)}`,
        'knife-edge profile, slit ramp or circular segment, solved for the threshold',
      ]),
      fixedItem('hysteresis', 'Spot size and hysteresis', angleOf(wayMm, radius), [
        `half of the ${showMm(2 * wayMm)} between both ways round, at ${showMm(radius)}`,
        'derived: the spot’s ramp between the two thresholds',
      ]),
    ],
  };
}

function speedItems({ speed: { lagMs, loopMs } }: HeadPlan, rateDegPerS: number): BudgetItem[] {
  const taking = (ms: number): string => `${showNumber(rateDegPerS, 1)} deg/s for ${showNumber(ms, 2)} ms`;
  return [
    fixedItem('lag', 'Sensors that lag', (rateDegPerS * lagMs) / 1000, [
      taking(lagMs),
      'first-order lag, τ ln((from − to)/(threshold − to))',
    ]),
    fixedItem('read-loop', 'Time between two reads', (rateDegPerS * loopMs) / 1000, [
      taking(loopMs),
      'data sheet of the converter',
    ]),
  ];
}

function placeItems(head: HeadPlan): BudgetItem[] {
  const sizes = causeSizes(head, null);
  const radius = innermostMm(head);
  const two = (sd: number): number => BUDGET_SIGMA * sd;
  const at = (sd: number): string => `two times ${showMm(sd)} at ${showMm(radius)}`;
  const { biasMm } = switchPlaces(head, radius);
  const side = Math.abs(biasMm) + Math.abs(head.disc.spec.process.windowGrowthMm) / 2;
  const radial = angleOf(side, radius - two(sizes.acrossMm)) - angleOf(side, radius);
  const tilt = (two(sizes.tiltDeg) * Math.PI) / 180;
  const scattered = (
    item: BudgetItemName,
    title: string,
    maxDeg: number,
    formula: string,
    source = DERIVED,
  ): BudgetItem => ({
    ...{ item, title, kind: 'scattered', maxDeg, formula, source },
  });
  return [
    scattered('edge', 'Edges off their place', angleOf(two(sizes.edgeMm), radius), at(sizes.edgeMm)),
    scattered(
      'bore',
      'Bore off the middle',
      angleOf(two(sizes.boreMm), radius),
      `arcsin(e/r), once a turn: ${at(sizes.boreMm)}`,
      'eccentricity, arcsin(e/r)',
    ),
    scattered(
      'tilt',
      'Disc askew on its shaft',
      radToDeg(Math.atan((1 - Math.cos(tilt)) / (2 * Math.sqrt(Math.cos(tilt))))),
      `about τ²/4, twice a turn, τ two times ${showDegrees(sizes.tiltDeg)}`,
      'derived: a tilted circle seen along the shaft, atan((1 − cos τ)/(2 √cos τ))',
    ),
    scattered(
      'tangential',
      'Sensors off their place along the track',
      radToDeg(two(sizes.alongMm) / radius),
      at(sizes.alongMm),
    ),
    scattered(
      'radial',
      'Sensors off their place across the track',
      radial,
      `what an edge is off by, ${at(sizes.acrossMm)}`,
    ),
    scattered(
      'shaft',
      'Shaft loose in its bearing',
      radToDeg(two(sizes.shaftMm) / radius),
      at(sizes.shaftMm),
    ),
    scattered(
      'north',
      'Head not set to north',
      two(sizes.northDeg),
      `two times ${showDegrees(sizes.northDeg)}`,
    ),
  ];
}
