import type { Board } from '../boards/index.ts';
import { throwIfAny, type Problem } from '../error/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { showOhm } from './showOhm.ts';

/** One connection to be made. */
export interface Wire {
  readonly from: string;
  readonly to: string;
  readonly note: string;
}

/** Which wire goes where. */
export interface WiringPlan {
  readonly board: Board;
  /** Converter pin of each channel, channel 0 first. n = channels of the code */
  readonly channelPins: readonly string[];
  /** Pin of the cup switch; its other wire goes to ground. `null` where there are no cups. */
  readonly cupPin: string | null;
  /** Fixed resistor of every channel. [ohm] */
  readonly resistorOhm: number;
  /** Where the sensor of every channel goes; the resistor goes to the other side. */
  readonly sensorTo: 'supply' | 'ground';
  /** Every connection of channels and cups, in words. */
  readonly rows: readonly Wire[];
}

function tooManyChannels({ analogPins }: Board, { positions, channels }: HeadPlan['disc']['code']): Problem {
  const inputs = analogPins.length;
  return {
    code: 'program/too-many-channels',
    what: 'The code has more channels than the board has analog inputs.',
    where: 'need.positions',
    got: `${channels.length} channels for ${positions} positions`,
    allowed: `${inputs} channels or fewer, on the inputs ${analogPins.join(', ')}`,
    fix:
      `Set need.positions to ${2 ** inputs} or fewer, which ${inputs} channels of one bit tell apart. ` +
      'A board with more analog inputs, an analog multiplexer, or a comparator for each channel on digital pins ' +
      'would read them all, but no program for these is written yet.',
  };
}

function channelPinProblems(board: Board, pins: readonly string[], channels: number): Problem[] {
  const problems: Problem[] = [];
  const allowed = `different pins out of ${board.analogPins.join(', ')}`;
  const firstPins = board.analogPins.slice(0, channels).join(', ');
  if (pins.length !== channels) {
    problems.push({
      code: 'program/pin-count',
      what: 'There are not as many channel pins as channels.',
      where: 'controller.channelPins',
      got: `${pins.length} pins for ${channels} channels`,
      allowed: `${channels} pins, one for each channel`,
      fix: `Set controller.channelPins to [${firstPins}], or leave it out to take these.`,
    });
  }
  for (const [channel, pin] of pins.entries()) {
    const where = `controller.channelPins[${channel}]`;
    const free = board.analogPins.find((candidate) => !pins.includes(candidate));
    const fix = free
      ? `Set it to ${free}, which is free.`
      : `Leave controller.channelPins out to take ${firstPins}.`;
    if (!board.analogPins.includes(pin)) {
      const what = board.digitalPins.includes(pin)
        ? 'A channel is on a pin that cannot measure a voltage.'
        : 'A channel is on a pin that the board does not have.';
      problems.push({ code: 'program/not-an-analog-pin', what, where, got: pin, allowed, fix });
    } else if (pins.indexOf(pin) < channel) {
      const what = `Channels ${pins.indexOf(pin)} and ${channel} are on the same pin.`;
      problems.push({ code: 'program/pin-used-twice', what, where, got: pin, allowed, fix });
    }
  }
  return problems;
}

function cupPinProblems(board: Board, pin: string, channelPins: readonly string[]): Problem[] {
  const where = 'cups.pin';
  const allowed = `a pin with an interrupt of its own: ${board.interruptPins.join(', ')}`;
  const fix = `Set cups.pin to ${board.interruptPins[0]}.`;
  if (channelPins.includes(pin)) {
    const what = `The cups and channel ${channelPins.indexOf(pin)} are on the same pin.`;
    return [{ code: 'program/pin-used-twice', what, where, got: pin, allowed, fix }];
  }
  if (board.interruptPins.includes(pin)) return [];
  const known = board.digitalPins.includes(pin) || board.analogPins.includes(pin);
  if (!known) {
    const what = 'The cups are on a pin that the board does not have.';
    return [{ code: 'program/unknown-pin', what, where, got: pin, allowed, fix }];
  }
  const what =
    'The cups are on a pin that cannot interrupt the program, so that fast pulses would be missed.';
  return [{ code: 'program/no-interrupt', what, where, got: pin, allowed, fix }];
}

/** Pins in channel order: the maker's own, or the board's first ones. */
function channelPinsOf({ controller }: Instrument, { board, disc }: HeadPlan): readonly string[] {
  return controller.channelPins ?? board.analogPins.slice(0, disc.code.channels.length);
}

/**
 * Everything that keeps the instrument from being wired to its board; none when it can be.
 *
 * @returns `program/too-many-channels`, `program/pin-count`, `program/not-an-analog-pin`,
 * `program/pin-used-twice`, `program/unknown-pin`, `program/no-interrupt`, all at once.
 */
export function wiringProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const { board } = head;
  const { code } = head.disc;
  const pins = channelPinsOf(instrument, head);
  const channels = code.channels.length;
  const problems =
    channels > board.analogPins.length
      ? [tooManyChannels(board, code)]
      : channelPinProblems(board, pins, channels);
  if (instrument.cups) problems.push(...cupPinProblems(board, instrument.cups.pin, pins));
  return problems;
}

function wires(
  { cups }: Instrument,
  { levels, circuit, channels }: HeadPlan,
  pins: readonly string[],
): Wire[] {
  const otherSide = circuit.sensorTo === 'supply' ? 'ground' : 'supply';
  const rows = pins.map((pin, channel) => ({
    from: `channel ${channel}`,
    to: pin,
    note:
      `Sensor of track ${channels[channel]!.track} from ${pin} to ${circuit.sensorTo}, ` +
      `${showOhm(levels.resistorOhm)} from ${pin} to ${otherSide}.`,
  }));
  if (!cups) return rows;
  const note = `Switch from ${cups.pin} to ground; the board's own pull-up holds the pin while it is open.`;
  return [...rows, { from: 'cups', to: cups.pin, note }];
}

/**
 * Which pin each channel and the cups go to, with the resistor of every channel. [ohm]
 *
 * @param instrument - Its pins; where it names none, channels take the board's analog inputs in order.
 * @throws VanewrightError with every problem of `wiringProblems`.
 */
export function wiringPlan(instrument: Instrument, head: HeadPlan): WiringPlan {
  throwIfAny(wiringProblems(instrument, head));
  const channelPins = channelPinsOf(instrument, head);
  return {
    board: head.board,
    channelPins,
    cupPin: instrument.cups?.pin ?? null,
    resistorOhm: head.levels.resistorOhm,
    sensorTo: head.circuit.sensorTo,
    rows: wires(instrument, head, channelPins),
  };
}
