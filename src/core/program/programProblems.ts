import type { Problem } from '../error/index.ts';
import { hasGates, readUs, settleUs, type HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { jsonCharsAtMost, lineCharsAtMost } from '../record/index.ts';
import { showNumber } from '../units/index.ts';
import { channelFacts } from './channelFacts.ts';
import { countsEach } from './markFacts.ts';
import { levelCountOf } from './readings.ts';
import { positionBytes, wordTableFor } from './wordTable.ts';
import { wiringProblems } from './wiring/wiringProblems.ts';

/** Time from the start bit to the stop bit of one character. [bit] */
const BITS_A_CHARACTER = 10;

/** Longest wait for sensors behind pulsed lights: four of them a read still leave a fast vane. [us] */
const SETTLE_MOST_US = 2000;

/** Program memory of a program around its tables; measured 6.4 kB, rounded up. [byte] */
const PROGRAM_BYTES = 8192;

/** Longest a wind sentence can be, line end counted. [characters] */
const SENTENCE_CHARS = 82;

/** Largest reading of the converter, or of a pin. [counts] */
export function countsMost({ board, circuit }: HeadPlan): number {
  return hasGates(circuit) ? 1 : 2 ** board.converterBits - 1;
}

/** Longest line that a program sends, line end counted. [characters] */
export function lineChars(instrument: Instrument, head: HeadPlan): number {
  const channels = head.disc.code.channels.length;
  const text = lineCharsAtMost(channels, countsMost(head), countsEach(head));
  const { format } = instrument.controller;
  if (format === 'json-lines')
    return Math.max(text, jsonCharsAtMost(channels, countsMost(head), countsEach(head)));
  return format === 'text' ? text : Math.max(text, SENTENCE_CHARS);
}

function thresholdProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const most = countsEach(head) * countsMost(head);
  const channels = channelFacts(instrument, head);
  const at = channels.findIndex(({ low, high }) => !(low >= 0 && low < high && high <= most));
  if (at < 0) return [];
  const { low, high } = channels[at]!;
  const { levels } = head;
  const shown = instrument.asBuilt
    ? `lower ${low} and upper ${high} counts on channel ${at}`
    : `lower ${showNumber(levels.lowCounts, 1)} and upper ${showNumber(levels.highCounts, 1)} counts`;
  return [
    {
      code: 'program/thresholds-crossed',
      what: 'The lower threshold lies above the upper one, or one of them is outside what the converter reads.',
      where: instrument.asBuilt ? `asBuilt.channels[${at}].lowCounts` : 'circuit.hysteresisCounts',
      got: shown,
      allowed: `from 1 to ${most} counts, the lower one not above the upper one`,
      fix: instrument.asBuilt
        ? 'Run `vanewright fit` on a recorded turn again.'
        : 'Leave circuit.hysteresisCounts out to take the recommended distance.',
    },
  ];
}

/** Most channels of three levels whose word fits two bytes. [-] */
const THREE_LEVEL_CHANNELS_MOST = 8;

/** Ways to read channels whose counts say more than on and off. */
const measures = (head: HeadPlan): boolean =>
  head.circuit.input === 'direct' || head.circuit.input === 'multiplexer';

/** What a code of three marks needs that this instrument does not have, with the cure; `null` when nothing. */
function threeLevelLack(
  instrument: Instrument,
  head: HeadPlan,
): Pick<Problem, 'got' | 'allowed' | 'fix'> | null {
  const { board, circuit, disc, marks, spec } = head;
  const channels = disc.code.channels.length;
  if (marks === null) {
    const got = `a track of 3 levels in ${disc.code.family}, and a ${spec.detector.kind}`;
    return { got, allowed: 'tracks of 2 levels for this detector', fix: 'Set disc.code to reflected-gray.' };
  }
  if (board.language !== 'sketch') {
    const fix = 'Set controller.board to atmega328p.';
    return { got: board.name, allowed: 'a board whose program is a sketch', fix };
  }
  if (!measures(head)) {
    const fix = 'Set circuit.input to direct.';
    return { got: `circuit.input ${circuit.input}`, allowed: 'direct or multiplexer, which measure', fix };
  }
  if (marks.kind === 'colours' && circuit.emitters === 'steady') {
    const fix = 'Set circuit.emitters to pulsed.';
    return { got: 'steady lights', allowed: 'lights of three colours, lit in turn: pulsed', fix };
  }
  if (marks.kind === 'greys' && circuit.emitters === 'pulsed') {
    return {
      got: 'pulsed lights',
      allowed: 'steady lights for three greys',
      fix: 'Set circuit.emitters to steady.',
    };
  }
  if (channels > THREE_LEVEL_CHANNELS_MOST) {
    const fix = `Set need.positions to ${3 ** THREE_LEVEL_CHANNELS_MOST} or fewer.`;
    return { got: `${channels} channels`, allowed: `${THREE_LEVEL_CHANNELS_MOST} or fewer`, fix };
  }
  if (instrument.asBuilt) {
    return {
      got: 'asBuilt',
      allowed: 'no asBuilt for three levels',
      fix: 'Remove asBuilt; the drawn marks are used.',
    };
  }
  return null;
}

function levelProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  if (levelCountOf(head.disc.code) === 2) return [];
  const lack = threeLevelLack(instrument, head);
  if (!lack) return [];
  const what = 'The code has tracks of three marks, and this instrument cannot tell them apart.';
  return [{ code: 'program/three-levels', what, where: 'disc.code', ...lack }];
}

function intervalProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const { lineIntervalMs, baud } = instrument.controller;
  const chars = lineChars(instrument, head);
  const sendMs = (chars * BITS_A_CHARACTER * 1000) / baud;
  const read = readUs({
    channels: head.disc.code.channels.length,
    circuit: head.circuit,
    detector: head.spec.detector,
    sourceOhm: head.levels.sourceOhm,
    board: head.board,
  });
  const shortest = Math.ceil(Math.max(sendMs, read / 1000));
  if (lineIntervalMs >= shortest) return [];
  return [
    {
      code: 'program/line-too-slow',
      what: 'A line takes longer to read and send than the time between two lines.',
      where: 'controller.lineIntervalMs',
      got: `${lineIntervalMs} ms at ${baud} bit/s, for lines of up to ${chars} characters`,
      allowed: `${shortest} ms or more at ${baud} bit/s`,
      fix: `Set controller.lineIntervalMs to ${shortest}, or raise controller.baud.`,
    },
  ];
}

function lightsProblems({ circuit, spec, disc }: HeadPlan): Problem[] {
  const wait = settleUs(spec.detector);
  if (circuit.emitters === 'steady' || wait <= SETTLE_MOST_US) return [];
  return [
    {
      code: 'program/lights-too-slow',
      what: 'The sensors follow the light too slowly to be lit for each read alone.',
      where: 'circuit.emitters',
      got: `${showNumber(wait / 1000, 1)} ms to settle, for ${disc.code.channels.length} channels`,
      allowed: `up to ${SETTLE_MOST_US / 1000} ms: riseMs and fallMs of ${SETTLE_MOST_US / 5000} ms or less`,
      fix: 'Set circuit.emitters to steady, or head.detector.kind to phototransistor.',
    },
  ];
}

function sleepProblems({ power, cups }: Instrument): Problem[] {
  if (power.sleep !== 'deep' || !cups) return [];
  return [
    {
      code: 'program/sleep-loses-cups',
      what: 'In deep sleep the cups are not counted, and a total with holes would look like wind.',
      where: 'power.sleep',
      got: 'deep, with cups',
      allowed: 'awake or idle with cups',
      fix: 'Set power.sleep to idle, which misses nothing.',
    },
  ];
}

function formatProblems({ controller }: Instrument, { board }: HeadPlan): Problem[] {
  if (controller.format !== 'senml' || board.language === 'micropython') return [];
  return [
    {
      code: 'program/format-needs-network',
      what: 'SenML packs are for boards on a network, and this board has none.',
      where: 'controller.format',
      got: `senml on ${board.name}`,
      allowed: 'text, json-lines, nmea-mwd or nmea-mwv on this board',
      fix: 'Set controller.format to text.',
    },
  ];
}

function asBuiltProblems({ asBuilt }: Instrument, { disc }: HeadPlan): Problem[] {
  const channels = disc.code.channels.length;
  if (!asBuilt || asBuilt.channels.length === channels) return [];
  return [
    {
      code: 'program/as-built-differs',
      what: 'The recorded turn was of another disc: it has not as many channels as the code.',
      where: 'asBuilt.channels',
      got: `${asBuilt.channels.length} channels for a code of ${channels}`,
      allowed: `${channels} channels`,
      fix: 'Record a turn of this disc and run `vanewright fit --write`, or remove asBuilt.',
    },
  ];
}

/** Bytes of the tables that a program holds: words, headings, half widths. [byte] */
function tableBytes({ asBuilt }: Instrument, { disc }: HeadPlan): number {
  const words = asBuilt ? asBuilt.positions.map(({ word }) => word) : disc.code.words;
  const table = wordTableFor(words, disc.code.channels.length, levelCountOf(disc.code));
  const bytes = positionBytes(words.length);
  const decode = table.kind === 'dense' ? table.positions.length * bytes : words.length * (2 + bytes);
  return decode + words.length * (asBuilt ? 8 : 6);
}

function memoryProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const { board, disc } = head;
  const needed = tableBytes(instrument, head) + PROGRAM_BYTES;
  if (needed <= board.flashBytes) return [];
  const each = (needed - PROGRAM_BYTES) / disc.code.positions;
  const most = 2 ** Math.floor(Math.log2((board.flashBytes - PROGRAM_BYTES) / each));
  return [
    {
      code: 'program/table-too-large',
      what: 'The table of words and headings does not fit the board beside its program.',
      where: 'need.positions',
      got: `${needed} bytes for ${disc.code.positions} positions`,
      allowed: `${board.flashBytes} bytes on ${board.name}`,
      fix: `Set need.positions to ${most}, or controller.board to rp2040.`,
    },
  ];
}

/**
 * Everything that keeps a program from being written; none when it can be.
 *
 * @returns The problems of the wiring, then those of the program, all `program/...` codes of docs/errors/program.md.
 */
export function programProblems(instrument: Instrument, head: HeadPlan): Problem[] {
  const wiring = [...asBuiltProblems(instrument, head), ...wiringProblems(instrument, head)];
  // Words of more channels than a controller's word has bits cannot be packed, so their tables are not looked at.
  const rest = wiring.some(({ code }) => code === 'program/too-many-channels')
    ? []
    : memoryProblems(instrument, head);
  return [
    ...wiring,
    ...head.faults,
    ...levelProblems(instrument, head),
    ...thresholdProblems(instrument, head),
    ...lightsProblems(head),
    ...sleepProblems(instrument),
    ...formatProblems(instrument, head),
    ...intervalProblems(instrument, head),
    ...rest,
  ];
}
