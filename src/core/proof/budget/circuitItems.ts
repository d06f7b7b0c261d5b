import { kelvinRange, NOMINAL_MARKS, type HeadPlan, type MarkVariation, type Rgb } from '../../head/index.ts';
import { radToDeg, showNumber } from '../../units/index.ts';
import { causeSizes } from '../builds/draws.ts';
import { daylightOf } from '../turn/daylight.ts';
import { BUDGET_SIGMA, type BudgetItem, type BudgetItemName } from './budgetItem.ts';
import {
  agedLight,
  creepFactor,
  dimmedFactor,
  litHours,
  temperatureColours,
  temperatureFactors,
} from './drift.ts';
import { markShiftDeg } from './markShifts.ts';
import { switchPlaces, type ChannelChange } from './switchShifts.ts';

/** One change of a channel: of windows and lands, and of three marks. */
export interface CircuitChange {
  readonly channel: ChannelChange;
  readonly marks: Partial<MarkVariation>;
}

/** A cause in the circuit: each of its changes by itself; several that come together are told apart by `together`. */
export interface CircuitCause {
  readonly item: BudgetItemName;
  readonly title: string;
  readonly kind: BudgetItem['kind'];
  readonly changes: readonly CircuitChange[];
  /** The changes are independent draws: their effects add as squares. */
  readonly together: boolean;
  readonly formula: string;
  readonly source: string;
}

const SOLVED = 'the circuit’s own equations, solved for the light at the threshold';

/**
 * Everything in sensors, lights and circuit that moves an edge, with the changes that a test can make one at a time.
 *
 * @check src/core/proof/budget/everyCause.test.ts (each change alone in an exact turn, on every example)
 */
export function circuitCauses(head: HeadPlan): CircuitCause[] {
  return [...makingCauses(head), ...driftCauses(head), daylightCause(head)];
}

/** Those causes as items of the budget. */
export function circuitItems(head: HeadPlan): BudgetItem[] {
  return circuitCauses(head).map(({ changes, together, ...item }) => {
    const moves = changes.map((change) => farthestDeg(head, change));
    const maxDeg = together ? Math.hypot(...moves) : Math.max(0, ...moves);
    return { ...item, maxDeg };
  });
}

/** Farthest that a change moves an edge halfway between both ways round. [deg] */
function farthestDeg(head: HeadPlan, { channel, marks }: CircuitChange): number {
  if (head.marks) return markShiftDeg(head, { ...NOMINAL_MARKS, ...marks });
  const radius = Math.min(...head.channels.map(({ radiusMm }) => radiusMm));
  const angle = (x: number): number => Math.asin(Math.max(-1, Math.min(1, x / radius)));
  const drawn = switchPlaces(head, radius).biasMm;
  const moved = switchPlaces(head, radius, channel).biasMm;
  return Number.isFinite(moved) ? Math.abs(radToDeg(angle(moved) - angle(drawn))) : Infinity;
}

/** A factor and its inverse. */
function both(factor: number, of: (factor: number) => CircuitChange): CircuitChange[] {
  return [of(factor), of(1 / factor)];
}

/** One of three colours changed, each in turn. */
function oneColour(factor: number): Rgb[] {
  return [0, 1, 2].map((changed): Rgb => {
    const [red, green, blue] = [0, 1, 2].map((colour) => (colour === changed ? factor : 1));
    return [red!, green!, blue!];
  });
}

function makingCauses(head: HeadPlan): CircuitCause[] {
  const sizes = causeSizes(head, null);
  const part = Math.exp(BUDGET_SIGMA * sizes.part);
  const resistor = 1 + BUDGET_SIGMA * sizes.resistor;
  const noise = BUDGET_SIGMA * sizes.thresholdCounts;
  const colours = head.marks?.kind === 'colours';
  const scattered = { kind: 'scattered', together: false, source: SOLVED } as const;
  return [
    {
      ...{ item: 'sensor', title: 'Sensors that differ', ...scattered },
      changes: both(part, (factor) => ({ channel: { part: factor }, marks: { part: factor } })).concat(
        colours ? oneColour(part).map((rgb) => ({ channel: {}, marks: { colours: rgb } })) : [],
      ),
      formula: `a sensor ${showNumber(part, 2)} times as strong`,
    },
    {
      ...{ item: 'resistor', title: 'Resistors that differ', ...scattered },
      changes: both(resistor, (factor) => ({ channel: { resistor: factor }, marks: { resistor: factor } })),
      formula: `a resistor ${showNumber(resistor, 3)} times as large`,
    },
    {
      ...{ item: 'threshold', title: 'Thresholds off their place', ...scattered },
      together: head.marks !== null,
      changes: thresholdChanges(head, noise),
      formula: `${showNumber(noise, 1)} counts, from noise, an input not quite settled or a gate’s own range`,
    },
  ];
}

function thresholdChanges(head: HeadPlan, noiseCounts: number): CircuitChange[] {
  if (!head.marks) {
    return [1, -1].map((sign) => ({ channel: { thresholdCounts: sign * noiseCounts }, marks: {} }));
  }
  return NOMINAL_MARKS.noise.map((_, measured) => ({
    channel: {},
    marks: { noise: NOMINAL_MARKS.noise.map((none, i) => (i === measured ? BUDGET_SIGMA : none)) },
  }));
}

function driftCauses(head: HeadPlan): CircuitCause[] {
  const { colder, hotter } = kelvinText(head);
  const light = agedLight(head);
  const creep = creepFactor(head);
  const same = (factor: number): CircuitChange => ({
    channel: { drift: factor },
    marks: { drift: [factor, factor, factor] },
  });
  const isColours = head.marks?.kind === 'colours';
  const tinted = (rgb: Rgb): CircuitChange => ({ channel: {}, marks: { drift: rgb } });
  const percent = (share: number): string => showNumber(100 * share, 1);
  const scattered = { kind: 'scattered', together: false } as const;
  return [
    {
      ...{ item: 'temperature', title: 'Heat and cold', ...scattered },
      changes: isColours ? temperatureColours(head).map(tinted) : temperatureFactors(head).map(same),
      formula: `a sensor and its light ${colder} K colder and ${hotter} K hotter than at the setting`,
      source: 'value from memory: share a kelvin of the kind of sensor and light',
    },
    {
      ...{ item: 'lamp-ageing', title: 'Lights that age', ...scattered },
      changes: isColours ? oneColour(light).map(tinted) : [same(dimmedFactor(head, light))],
      formula: `${percent(1 - light)} % dimmer after ${showNumber(litHours(head), 0)} h`,
      source: 'value from memory: 70 % left of a diode after 50,000 h, half of a laser after 10,000 h',
    },
    {
      ...{ item: 'creep', title: 'Cells that creep', ...scattered },
      changes: both(creep, same),
      formula: `a resistance changed by ${percent(creep - 1)} % for good`,
      source: 'photoresistor data sheets: ±20 % after temperature cycling; none for silicon',
    },
  ];
}

function kelvinText({ spec }: HeadPlan): { readonly colder: string; readonly hotter: string } {
  const { colder, hotter } = kelvinRange(spec);
  return { colder: showNumber(Math.abs(colder), 0), hotter: showNumber(hotter, 0) };
}

function daylightCause(head: HeadPlan): CircuitCause {
  const daylight = daylightOf(head);
  return {
    ...{ item: 'daylight', title: 'Daylight that comes and goes', kind: 'fixed', together: false },
    changes: head.marks ? [] : [{ channel: { addedLight: -daylight }, marks: {} }],
    formula: `${showNumber(100 * daylight, 1)} % of a window’s light`,
    source: SOLVED,
  };
}
