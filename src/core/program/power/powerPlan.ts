import { readUs, settleUs, type HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';

/** One thing that takes current. */
export interface PowerShare {
  readonly what: string;
  /** While it is on, at the board's supply. [mA] */
  readonly onMa: number;
  /** Share of the time that it is on. [-], 0..1 */
  readonly duty: number;
  /** On average. [mA] */
  readonly averageMa: number;
}

/** What the instrument takes, and what must give it. */
export interface PowerPlan {
  readonly shares: readonly PowerShare[];
  /** At the board's supply. [mA] */
  readonly averageMa: number;
  /** Out of the battery, losses of the regulator with it; `null` without a battery. [mA] */
  readonly batteryMa: number | null;
  /** How long the battery lasts alone; `null` without a battery. [d] */
  readonly batteryDays: number | null;
  /** Battery that lasts `power.darkDays`; `null` without a battery. [mAh] */
  readonly neededCapacityMah: number | null;
  /** Smallest panel that carries it through the darkest month; `null` without sun hours or battery. [W] */
  readonly panelW: number | null;
  /** What can never be known with this plan, in words; empty when nothing is lost. */
  readonly unknowable: readonly string[];
  /** What else to say, in words. */
  readonly notes: readonly string[];
}

/** Share of its capacity that a battery should give before it is filled again. Common practice, no source. [-] */
const USABLE = 0.5;

/** Share of what a panel is sold for that reaches the battery: heat, dirt, angle, charger. Common practice, no source. [-] */
const PANEL_YIELD = 0.6;

/** Efficiency of a switching regulator at small currents. Common practice, no source. [-] */
const SWITCHING = 0.85;

/** Time for a controller to wake, read once and send a line, besides the read itself. [ms] */
const WAKE_MS = 5;

/** Time from the start bit to the stop bit of one character. [bit] */
const BITS_A_CHARACTER = 10;

function share(what: string, onMa: number, duty: number): PowerShare {
  return { what, onMa, duty, averageMa: onMa * duty };
}

/** Share of the time that the controller runs, and that its lights are on. */
function duties(instrument: Instrument, head: HeadPlan): { awake: number; lights: number } {
  const { circuit, spec, levels, board, disc, rate } = head;
  const { controller, power } = instrument;
  const loop = {
    channels: disc.code.channels.length,
    circuit,
    detector: spec.detector,
    sourceOhm: levels.sourceOhm,
    board,
  };
  const readMs = readUs(loop) / 1000;
  const sendMs = (rate.lineChars * BITS_A_CHARACTER * 1000) / controller.baud;
  const awakeMs = readMs + sendMs + WAKE_MS;
  const awake = power.sleep === 'deep' ? Math.min(1, awakeMs / controller.lineIntervalMs) : 1;
  if (circuit.emitters === 'steady') return { awake, lights: 1 };
  // Lit while they settle and while the channels are read: half of one read.
  const litMs = readMs / 2;
  const everyMs = power.sleep === 'deep' ? controller.lineIntervalMs : readMs;
  return { awake, lights: Math.min(1, litMs / everyMs) };
}

/** Current of one lit divider; dark ones take less. [mA] */
function dividerMa({ spec, levels, board }: HeadPlan): number {
  const { detector } = spec;
  if (detector.kind === 'photoresistor') {
    return (1000 * board.supplyV) / (detector.litOhm + levels.resistorOhm);
  }
  return 'litMa' in detector ? Math.min(detector.litMa, (1000 * board.supplyV) / levels.resistorOhm) : 0;
}

/** Current of a laser module by its power: a diode of 20 % and its driver. Common practice, no source. [mA] */
function lightMa({ spec, board }: HeadPlan): number {
  const { light } = spec;
  return light.kind === 'led' ? light.currentMa : 15 + light.powerMw / (0.2 * board.supplyV);
}

function shares(instrument: Instrument, head: HeadPlan): PowerShare[] {
  const { board, disc } = head;
  const { power } = instrument;
  const { awake, lights } = duties(instrument, head);
  const channels = disc.code.channels.length;
  const running = power.boardMa ?? board.currentMa[power.sleep === 'idle' ? 'idle' : 'awake'];
  const rows = [share(power.sleep === 'deep' ? 'board, awake' : 'board', running, awake)];
  if (power.sleep === 'deep') rows.push(share('board, asleep', board.currentMa.deep, 1 - awake));
  rows.push(share('lights', channels * lightMa(head), lights));
  rows.push(share('sensors, all lit', channels * dividerMa(head), 1));
  return rows;
}

function unknowable({ power, controller }: Instrument): string[] {
  if (power.sleep !== 'deep') return [];
  const every = `${controller.lineIntervalMs / 1000} s`;
  return [
    `Between two lines, ${every} apart, nothing is read: gusts, turns and calms shorter than that are never known.`,
    'Jumps cannot be told from turns, since the vane has time for any turn while nobody looks.',
    'Time stamps drift: the clock of the sleeping chip is exact to a tenth only.',
  ];
}

function notesOf({ power }: Instrument, head: HeadPlan): string[] {
  const notes: string[] = [];
  if (power.boardMa === null) {
    notes.push(
      'The current of the board is a usual value from memory: measure yours and write power.boardMa.',
    );
  }
  if (power.sleep === 'deep' && head.circuit.emitters === 'steady') {
    notes.push('The lights stay on while the board sleeps: circuit.emitters: pulsed would save most of it.');
  }
  if (head.circuit.emitters === 'pulsed') {
    notes.push(`Each read waits ${settleUs(head.spec.detector)} us for the sensors, once dark and once lit.`);
  }
  return notes;
}

/**
 * Average current, days on the battery, and the panel that carries it.
 *
 * @param instrument - Its supply and what it does between two reads. [mAh, V, h]
 * @param head - Lights, sensors and board of the same instrument. [mA, ohm]
 * @returns Currents [mA], days, and the watts of a panel; what a sleep plan makes unknowable, in words.
 * @source derived: a linear regulator passes the current on, a switching one the power; days = half the capacity over the
 * current; panel = energy of a day / (sun hours x 0.6).
 * @check src/core/program/power/powerPlan.test.ts
 */
export function powerPlan(instrument: Instrument, head: HeadPlan): PowerPlan {
  const { power } = instrument;
  const rows = shares(instrument, head);
  const averageMa = rows.reduce((sum, row) => sum + row.averageMa, 0);
  const { battery, sunHoursPerDay, darkDays, regulator } = power;
  const ratio = battery ? head.board.supplyV / battery.voltageV : 1;
  const batteryMa = battery ? (regulator === 'linear' ? averageMa : (averageMa * ratio) / SWITCHING) : null;
  const dayWh = battery ? (batteryMa! * battery.voltageV * 24) / 1000 : 0;
  return {
    shares: rows,
    averageMa,
    batteryMa,
    batteryDays: battery ? (battery.capacityMah * USABLE) / (batteryMa! * 24) : null,
    neededCapacityMah: battery ? (batteryMa! * 24 * darkDays) / USABLE : null,
    panelW: battery && sunHoursPerDay !== null ? dayWh / (sunHoursPerDay * PANEL_YIELD) : null,
    unknowable: unknowable(instrument),
    notes: notesOf(instrument, head),
  };
}

/** What keeps a power plan from working: a battery below the board's supply, or too small. [V], [mAh] */
export function powerShortfalls(instrument: Instrument, head: HeadPlan): readonly string[] {
  const { battery, regulator, darkDays } = instrument.power;
  if (!battery) return [];
  const plan = powerPlan(instrument, head);
  const found: string[] = [];
  if (battery.voltageV < head.board.supplyV && regulator === 'linear') {
    found.push(`A linear regulator cannot make ${head.board.supplyV} V out of ${battery.voltageV} V.`);
  }
  if (plan.batteryDays! < darkDays) {
    found.push(
      `The battery lasts ${plan.batteryDays!.toFixed(1)} days without sun, and ${darkDays} are asked: ` +
        `take ${Math.ceil(plan.neededCapacityMah!)} mAh.`,
    );
  }
  return found;
}
