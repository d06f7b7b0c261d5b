import type { Board } from '../../boards/index.ts';
import { throwIfAny } from '../../error/index.ts';
import { gateOf, type CircuitInput, type HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { busRoles, freePins, type BusRole } from './inputs.ts';
import { showOhm } from './showOhm.ts';
import { channelPinsOf, cupPins, wiringProblems } from './wiringProblems.ts';

/** One connection to be made. */
export interface Wire {
  readonly from: string;
  readonly to: string;
  readonly note: string;
}

/** Which wire goes where. */
export interface WiringPlan {
  readonly board: Board;
  /** How the channels are read. */
  readonly input: CircuitInput;
  /** Pin of each channel, or input of the chip that gathers them, channel 0 first. n = channels of the code */
  readonly channelPins: readonly string[];
  /** Pins that serve all channels together. */
  readonly busPins: readonly { readonly role: BusRole; readonly pin: string }[];
  /** Pin of the cup switch; its other wire goes to ground. `null` where there are no cups. */
  readonly cupPin: string | null;
  /** Fixed resistor of every channel. [ohm] */
  readonly resistorOhm: number;
  /** Where the sensor of every channel goes; the resistor goes to the other side. */
  readonly sensorTo: 'supply' | 'ground';
  /** Every connection of channels, chips, lights and cups, in words. */
  readonly rows: readonly Wire[];
}

/** What stands between the middle of a divider and the board. */
const between: Record<CircuitInput, string> = {
  direct: '',
  digital: ' through a comparator',
  multiplexer: ' of the multiplexer',
  'shift-register': ' of the shift registers, through a comparator',
  ladder: ' of the ladder, through a comparator',
};

function channelWires({ levels, circuit, channels }: HeadPlan, pins: readonly string[]): Wire[] {
  const otherSide = circuit.sensorTo === 'supply' ? 'ground' : 'supply';
  const middle = circuit.input === 'direct' ? null : `the middle, which goes to`;
  return pins.map((pin, channel) => {
    const through =
      gateOf(circuit) === 'schmitt'
        ? between[circuit.input].replace('comparator', 'Schmitt inverter')
        : between[circuit.input];
    const at = middle ? `${middle} ${pin}${through}` : pin;
    return {
      from: `channel ${channel}`,
      to: pin,
      note:
        `Sensor of track ${channels[channel]!.track} from ${at} to ${circuit.sensorTo}, ` +
        `${showOhm(levels.resistorOhm)} from ${middle ? 'the middle' : pin} to ${otherSide}.`,
    };
  });
}

const busNotes: Record<BusRole, string> = {
  common: '',
  'select 0': 'Select line S0 of the multiplexer.',
  'select 1': 'Select line S1 of the multiplexer.',
  'select 2': 'Select line S2 of the multiplexer.',
  'select 3': 'Select line S3 of the multiplexer.',
  load: 'Parallel load of every shift register, active low.',
  clock: 'Clock of every shift register; their clock inhibit goes to ground.',
  data: 'Serial output of the first register; the output of each next one goes to the serial input of the one before.',
  lights: '',
  red: '',
  green: '',
  blue: '',
};

/** What stands before the one converter pin that all channels share. */
function commonNote({ ladder }: HeadPlan): string {
  if (ladder === null) return 'Common pin of the multiplexer; its enable goes to ground.';
  const resistors = ladder.resistors.map(({ place, ohm }) => `${place} ${showOhm(ohm)}`).join(', ');
  const how =
    ladder.kind === 'r-2r'
      ? 'Leg c goes from the output of gate c to node c, rung c from node c to node c + 1, the end from node 0 to ground; the pin is the last node.'
      : 'Leg c goes from the output of gate c to the pin.';
  return `Output of the ladder. ${how} ${resistors}.`;
}

/** How the pulsed lights are driven: by the pin itself as long as it can carry them. */
function lightsNote({ board, spec, disc }: HeadPlan, role: BusRole): string {
  const which = role === 'lights' ? 'lights' : `${role} lights`;
  const ma = spec.light.kind === 'led' ? spec.light.currentMa * disc.code.channels.length : Infinity;
  return ma <= board.pinMa
    ? `Feeds the ${which} through their resistors; high is on.`
    : `Gate of a logic-level transistor that switches the ground side of all ${which}; high is on, 100 kohm to ground.`;
}

function busPinsOf(head: HeadPlan, taken: readonly string[]): WiringPlan['busPins'] {
  const { board } = head;
  const free = [...freePins(board, taken)];
  return busRoles(head).map((role) => ({
    role,
    pin: role === 'common' ? board.analogPins[0]! : free.shift()!,
  }));
}

/**
 * Which pin each channel, chip, light and the cups go to, with the resistor of every channel. [ohm]
 *
 * @param instrument - Its pins; where it names none, channels take the board's inputs in order.
 * @throws VanewrightError with every problem of `wiringProblems`.
 */
export function wiringPlan(instrument: Instrument, head: HeadPlan): WiringPlan {
  throwIfAny(wiringProblems(instrument, head));
  const { cups } = instrument;
  const channelPins = channelPinsOf(instrument, head);
  const busPins = busPinsOf(head, [...channelPins, ...cupPins(instrument)]);
  const rows = channelWires(head, channelPins);
  for (const { role, pin } of busPins) {
    const note = role === 'common' ? commonNote(head) : busNotes[role] || lightsNote(head, role);
    rows.push({ from: role, to: pin, note });
  }
  if (cups) {
    const note = `Switch from ${cups.pin} to ground; the board's own pull-up holds the pin while it is open.`;
    rows.push({ from: 'cups', to: cups.pin, note });
  }
  return {
    board: head.board,
    input: head.circuit.input,
    channelPins,
    busPins,
    cupPin: cups?.pin ?? null,
    resistorOhm: head.levels.resistorOhm,
    sensorTo: head.circuit.sensorTo,
    rows,
  };
}

/** Pin of a job that the plan has given out. */
export function busPin({ busPins }: WiringPlan, role: BusRole): string | null {
  return busPins.find((bus) => bus.role === role)?.pin ?? null;
}
