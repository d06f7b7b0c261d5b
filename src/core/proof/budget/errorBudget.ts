import type { HeadPlan } from '../../head/index.ts';
import { radToDeg, showDegrees, showMm, showNumber } from '../../units/index.ts';
import { causeSizes } from '../builds/draws.ts';
import type { BudgetItem, BudgetItemName, ErrorBudget } from './budgetItem.ts';
import { switchPlaces, type ChannelChange } from './switchShifts.ts';

/** Scattered causes are told at so many standard deviations: 95 of 100 lie within. [-] */
export const BUDGET_SIGMA = 2;

/**
 * How far a sensor may have changed since its thresholds were measured, by a cold night, a hot day and some years.
 *
 * @source photoresistor: ±20 % after temperature cycling (data sheets). Value from memory: 10 % of a transistor's current.
 */
export const DRIFT = { photoresistor: 0.2, other: 0.1 } as const;

/** One part in a part's logarithm or a resistor's share, as a factor two standard deviations up. [-] */
function factorOf(sd: number, isLog: boolean): number {
  return isLog ? Math.exp(BUDGET_SIGMA * sd) : 1 + BUDGET_SIGMA * sd;
}

/**
 * What puts a reading out, cause by cause in closed form, largest first.
 *
 * Every length is an angle at the innermost channel, where a millimetre is the most degrees.
 *
 * @param head - The design.
 * @param rateDegPerS - Turn rate that is asked of it. [deg/s]
 * @source each item names its own.
 * @check src/core/proof/budget/errorBudget.test.ts (each cause alone in an exact turn)
 */
export function errorBudget(head: HeadPlan, rateDegPerS: number): ErrorBudget {
  const items = [...fixedItems(head, rateDegPerS), ...placeItems(head), ...circuitItems(head)].filter(
    ({ maxDeg }) => Number.isFinite(maxDeg),
  );
  items.sort((a, b) => b.maxDeg - a.maxDeg);
  const sum = (kind: BudgetItem['kind'], power: number): number =>
    items.filter((item) => item.kind === kind).reduce((total, { maxDeg }) => total + maxDeg ** power, 0);
  return {
    items,
    worst: worstOf(items),
    combinedDeg: sum('fixed', 1) + Math.sqrt(sum('scattered', 2)),
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

/** Angle of a sideways length. [deg] @source derived: asin(length/radius). */
function angleOf(lengthMm: number, radiusMm: number): number {
  return radToDeg(Math.asin(Math.min(1, Math.abs(lengthMm) / radiusMm)));
}

const DERIVED = 'derived; plane geometry';

function fixedItems(head: HeadPlan, rateDegPerS: number): BudgetItem[] {
  const { disc, speed, levels } = head;
  const radius = innermostMm(head);
  const { windowGrowthMm } = disc.spec.process;
  const { biasMm, wayMm } = switchPlaces(head, radius);
  const light = (100 * (levels.risingLight + levels.fallingLight)) / 2;
  const where = head.marks
    ? 'where one mark turns into the next'
    : `a channel changes at ${showNumber(light, 1)} % light`;
  const fixed = (
    item: BudgetItemName,
    title: string,
    maxDeg: number,
    formula: string,
    source: string,
  ): BudgetItem => ({
    ...{ item, title, kind: 'fixed', maxDeg, formula, source },
  });
  return [
    fixed(
      'quantisation',
      'Half a step',
      180 / disc.code.positions,
      `180/${disc.code.positions}; over the turn 1/√12 of a step`,
      'uniform distribution, q/√12',
    ),
    fixed(
      'growth',
      'Windows that come out wider or narrower',
      angleOf(windowGrowthMm / 2, radius),
      `half of ${showMm(Math.abs(windowGrowthMm))} an edge at ${showMm(radius)}`,
      DERIVED,
    ),
    fixed(
      'edge-bias',
      'Thresholds away from half light',
      angleOf(biasMm, radius),
      `${where}, ${showMm(Math.abs(biasMm))} from the edge, at ${showMm(radius)}`,
      'knife-edge profile, slit ramp or circular segment, solved for the threshold',
    ),
    fixed(
      'hysteresis',
      'Spot size and hysteresis',
      angleOf(wayMm, radius),
      `half of the ${showMm(2 * wayMm)} between both ways round, at ${showMm(radius)}`,
      'derived: the spot’s ramp between the two thresholds',
    ),
    fixed(
      'lag',
      'Sensors that lag',
      (rateDegPerS * speed.lagMs) / 1000,
      `${showNumber(rateDegPerS, 1)} deg/s for ${showNumber(speed.lagMs, 2)} ms`,
      'first-order lag, τ ln((from − to)/(threshold − to))',
    ),
    fixed(
      'read-loop',
      'Time between two reads',
      (rateDegPerS * speed.loopMs) / 1000,
      `${showNumber(rateDegPerS, 1)} deg/s for ${showNumber(speed.loopMs, 2)} ms`,
      'data sheet of the converter',
    ),
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

function circuitItems(head: HeadPlan): BudgetItem[] {
  const sizes = causeSizes(head, null);
  const radius = innermostMm(head);
  const drawn = switchPlaces(head, radius).biasMm;
  const changed = (changes: readonly ChannelChange[]): number =>
    head.marks
      ? 0
      : Math.max(
          ...changes.map((change) =>
            Math.abs(angleMoved(switchPlaces(head, radius, change).biasMm, drawn, radius)),
          ),
        );
  const both = (name: keyof ChannelChange, factor: number): ChannelChange[] => [
    { [name]: factor },
    { [name]: 1 / factor },
  ];
  const noise = BUDGET_SIGMA * sizes.thresholdCounts;
  const daylight = head.circuit.emitters === 'pulsed' ? 0 : (head.spec.daylightShare ?? 0);
  const drift = 1 + (head.spec.detector.kind === 'photoresistor' ? DRIFT.photoresistor : DRIFT.other);
  const part = factorOf(sizes.part, true);
  const resistor = factorOf(sizes.resistor, false);
  const source = 'the circuit’s own equations, solved for the light at the threshold';
  const item = (
    name: BudgetItemName,
    title: string,
    kind: BudgetItem['kind'],
    maxDeg: number,
    formula: string,
  ): BudgetItem => ({
    ...{ item: name, title, kind, maxDeg, formula, source },
  });
  return [
    item(
      'sensor',
      'Sensors that differ',
      'scattered',
      changed(both('part', part)),
      `a sensor ${showNumber(part, 2)} times as strong`,
    ),
    item(
      'resistor',
      'Resistors that differ',
      'scattered',
      changed(both('resistor', resistor)),
      `a resistor ${showNumber(resistor, 3)} times as large`,
    ),
    item(
      'threshold',
      'Noise in the thresholds',
      'scattered',
      changed([{ thresholdCounts: noise }, { thresholdCounts: -noise }]),
      `${showNumber(noise, 1)} counts`,
    ),
    item(
      'drift',
      'Temperature and ageing',
      'scattered',
      changed(both('drift', drift)),
      `a sensor changed by ${showNumber(100 * (drift - 1), 0)} % since thresholds were measured`,
    ),
    item(
      'daylight',
      'Daylight that comes and goes',
      'fixed',
      changed([{ addedLight: -daylight }]),
      `${showNumber(100 * daylight, 1)} % of a window’s light`,
    ),
  ];
}

function angleMoved(toMm: number, fromMm: number, radiusMm: number): number {
  const angle = (x: number): number => Math.asin(Math.max(-1, Math.min(1, x / radiusMm)));
  return radToDeg(angle(toMm) - angle(fromMm));
}
