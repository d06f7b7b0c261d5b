import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { INPUTS_MOST, type CircuitInput, type HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { busRoles, freePins, inputPlaces, type InputPlaces } from './inputs.ts';

/** Other ways to read that many channels with this board, in the words of the instrument file. */
function otherInputs(board: Board, input: CircuitInput, channels: number): readonly string[] {
  const ways: [CircuitInput, string][] = [
    ['direct', "the board's own converter"],
    ['multiplexer', 'one converter pin behind a 16-way multiplexer'],
    ['digital', 'a comparator for each channel'],
    ['shift-register', 'comparators behind shift registers'],
  ];
  return ways
    .filter(([way]) => way !== input && inputPlaces(way, board, []).names.length >= channels)
    .map(([way, words]) => `circuit.input to ${way} (${words})`);
}

function tooManyChannels(head: HeadPlan, places: InputPlaces): Problem {
  const { board, circuit } = head;
  const { positions, channels } = head.disc.code;
  const inputs = places.names.length;
  const others = otherInputs(board, circuit.input, channels.length);
  const fewer = `Set need.positions to ${2 ** inputs} or fewer, which ${inputs} channels of one bit tell apart`;
  return {
    code: 'program/too-many-channels',
    what: `The code has more channels than there are ${places.are}.`,
    where: 'need.positions',
    got: `${channels.length} channels for ${positions} positions`,
    allowed: `${inputs} channels or fewer, on the ${places.are} ${places.names.join(', ')}`,
    fix: others.length > 0 ? `Set ${others.join(', or ')}. Or: ${fewer}.` : `${fewer}.`,
  };
}

function channelPinProblems(
  { board, circuit, disc }: HeadPlan,
  pins: readonly string[],
  { names, are }: InputPlaces,
): Problem[] {
  const channels = disc.code.channels.length;
  const problems: Problem[] = [];
  const allowed = `different ones out of the ${are} ${names.join(', ')}`;
  const first = names.slice(0, channels).join(', ');
  if (pins.length !== channels) {
    problems.push({
      code: 'program/pin-count',
      what: 'There are not as many channel pins as channels.',
      where: 'controller.channelPins',
      got: `${pins.length} pins for ${channels} channels`,
      allowed: `${channels} pins, one for each channel`,
      fix: `Set controller.channelPins to [${first}], or leave it out to take these.`,
    });
  }
  for (const [channel, pin] of pins.entries()) {
    const where = `controller.channelPins[${channel}]`;
    const free = names.find((candidate) => !pins.includes(candidate));
    const fix = free
      ? `Set it to ${free}, which is free.`
      : `Leave controller.channelPins out to take ${first}.`;
    if (!names.includes(pin)) {
      problems.push({ ...notAnInput(board, circuit.input, pin), where, got: pin, allowed, fix });
    } else if (pins.indexOf(pin) < channel) {
      const what = `Channels ${pins.indexOf(pin)} and ${channel} are on the same pin.`;
      problems.push({ code: 'program/pin-used-twice', what, where, got: pin, allowed, fix });
    }
  }
  return problems;
}

function notAnInput(board: Board, input: CircuitInput, pin: string): Pick<Problem, 'code' | 'what'> {
  if (input !== 'direct') {
    const what = `A channel is on a pin that does not serve with circuit.input: ${input}.`;
    return { code: 'program/not-an-input', what };
  }
  const what = board.digitalPins.includes(pin)
    ? 'A channel is on a pin that cannot measure a voltage.'
    : 'A channel is on a pin that the board does not have.';
  return { code: 'program/not-an-analog-pin', what };
}

function cupPinProblems(board: Board, pin: string, channelPins: readonly string[]): Problem[] {
  const where = 'cups.pin';
  const free = board.interruptPins.filter((candidate) => !channelPins.includes(candidate));
  const allowed = `a pin with an interrupt of its own: ${board.interruptPins.join(', ')}`;
  const fix = `Set cups.pin to ${free[0] ?? board.interruptPins[0]}.`;
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

function busPinProblems(head: HeadPlan, taken: readonly string[]): Problem[] {
  const { board, circuit } = head;
  const needed = busRoles(head).filter((role) => role !== 'common').length;
  const free = freePins(board, taken).length;
  if (free >= needed) return [];
  return [
    {
      code: 'program/no-free-pin',
      what: 'Channels and cups leave too few pins for the chips and lights around them.',
      where: 'controller.channelPins',
      got: `${free} free pins`,
      allowed: `${needed} free pins or more`,
      fix: `Set circuit.input to ${circuit.input === 'digital' ? 'shift-register' : 'direct'}, or circuit.emitters to steady.`,
    },
  ];
}

/** Pins that the cups need, whatever else is wired. */
export function cupPins({ cups }: Instrument): readonly string[] {
  return cups ? [cups.pin] : [];
}

/** Pins of the channels in order: as they were found, the maker's own, or the first free ones. */
export function channelPinsOf(instrument: Instrument, { board, circuit, disc }: HeadPlan): readonly string[] {
  const { asBuilt, controller } = instrument;
  if (asBuilt) return asBuilt.channels.map(({ pin }) => pin);
  const taken = [...cupPins(instrument)];
  const names = inputPlaces(circuit.input, board, taken).names;
  return controller.channelPins ?? names.slice(0, disc.code.channels.length);
}

/** A ladder has as many legs as there are channels. */
function legsOf(places: InputPlaces, { circuit, disc }: HeadPlan): InputPlaces {
  if (circuit.input !== 'ladder') return places;
  return { ...places, names: places.names.slice(0, disc.code.channels.length) };
}

/**
 * Everything that keeps the instrument from being wired to its board; none when it can be.
 *
 * @returns `program/too-many-channels`, `program/pin-count`, `program/not-an-analog-pin`, `program/not-an-input`,
 * `program/pin-used-twice`, `program/unknown-pin`, `program/no-interrupt`, `program/no-free-pin`, all at once.
 */
export function wiringProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const { board, circuit } = head;
  const pins = channelPinsOf(instrument, head);
  const channels = head.disc.code.channels.length;
  const places = inputPlaces(circuit.input, board, []);
  const problems =
    channels > Math.min(places.names.length, INPUTS_MOST)
      ? [tooManyChannels(head, places)]
      : channelPinProblems(head, pins, legsOf(places, head));
  if (instrument.cups) problems.push(...cupPinProblems(board, instrument.cups.pin, pins));
  problems.push(...busPinProblems(head, [...pins, ...cupPins(instrument)]));
  return problems;
}
