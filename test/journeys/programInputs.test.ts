import { describe, expect, it } from 'vitest';
import { programFor, wiringPlan } from '../../src/core/program/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import type { AvrChipName } from '../support/avrChips.ts';
import {
  FAST_SENSOR,
  cupsOn,
  DARK_COUNTS,
  freshLine,
  jettyHead,
  jettyInstrument,
  LIT_COUNTS,
  setCounts,
  statusOf,
  type VaneWishes,
} from '../support/avrVane.ts';
import { multiplexerOn, registersOn } from '../support/outsideChips.ts';

// Gray's formula and the geometry of the mast, worked out here: a face that looks up turns the marks against headings.
const wordOf = (k: number, channels: number): string => (k ^ (k >> 1)).toString(2).padStart(channels, '0');
const headingOf = (k: number, positions: number): number => (360 - ((k + 0.5) * 360) / positions) % 360;

/** Volts that the converter rounds down to these counts. [V] */
const volts = (counts: number): number => ((counts + 0.5) * 5) / 1024;

async function chipFor(wishes: VaneWishes) {
  const instrument = jettyInstrument(wishes);
  const head = jettyHead(instrument, wishes);
  const name = (wishes.board ?? 'atmega328p') as AvrChipName;
  const { hex } = await buildAvr(programFor(instrument, head).source, name);
  const { busPins, channelPins } = wiringPlan(instrument, head);
  const pin = (role: string): string => busPins.find((bus) => bus.role === role)!.pin;
  return { chip: new AvrChip(hex, { chip: name }), pin, channelPins };
}

/** Shows every position both ways and checks the heading of each. */
function turnBothWays(
  chip: AvrChip,
  positions: number,
  show: (channel: number, high: boolean) => void,
  counts: (high: boolean) => number,
): void {
  const channels = Math.ceil(Math.log2(positions));
  const there = Array.from({ length: positions }, (_, k) => k);
  for (const k of [...there, 0, ...there.toReversed()]) {
    const word = wordOf(k, channels);
    for (const [channel, bit] of [...word].entries()) show(channel, bit === '1');
    const line = freshLine(chip, 100);
    expect(line.word).toBe(word);
    expect(line.counts).toEqual(Array.from(word, (bit) => counts(bit === '1')));
    expect(Math.abs(line.headingDeg! - headingOf(k, positions))).toBeLessThanOrEqual(0.005 + 1e-9);
    expect(line.flags.filter((flag) => flag !== 'allDark')).toEqual([]);
  }
}

const lit = (high: boolean): number => (high ? LIT_COUNTS : DARK_COUNTS);

describe.each(['atmega328p', 'atmega32u4'] as const)('on the emulated %s every position is read', (board) => {
  it('through its converter, with cups on the other interrupt', async () => {
    const cups = cupsOn(board === 'atmega32u4' ? 'D7' : 'D3');
    const { chip } = await chipFor({ board, cups });
    const inputs = board === 'atmega32u4' ? [7, 6, 5, 4, 1, 0] : [0, 1, 2, 3, 4, 5];
    chip.setDigital(cups.pin, true);
    turnBothWays(chip, 32, (channel, high) => setCounts(chip, inputs[channel]!, lit(high)), lit);
    chip.setDigital(cups.pin, false);
    chip.runMs(3);
    expect(freshLine(chip).cups).toMatchObject({ pulses: 1 });
    expect(statusOf(chip.statuses[0]!).start).toBe('power');
  });

  it('of seven channels behind a multiplexer, whose wire remembers the channel before', async () => {
    const { chip, pin } = await chipFor({ board, positions: 128, input: 'multiplexer', lineIntervalMs: 4 });
    const input = board === 'atmega32u4' ? 7 : 0;
    const select = [0, 1, 2, 3].map((line) => pin(`select ${line}`));
    const outside = multiplexerOn(chip, select, input);
    turnBothWays(chip, 128, (channel, high) => outside.setVolts(channel, volts(lit(high))), lit);
  });

  it('of seven channels behind comparators', async () => {
    const { chip, channelPins } = await chipFor({ board, positions: 128, input: 'digital' });
    turnBothWays(chip, 128, (channel, high) => chip.setDigital(channelPins[channel]!, high), Number);
  });

  it.each(['r-2r', 'weighted'] as const)('of five channels on one wire, a ladder %s', async (kind) => {
    const wishes: VaneWishes = { board, input: 'ladder', ladderKind: kind };
    const { chip } = await chipFor(wishes);
    const resistors = jettyHead(jettyInstrument(wishes), wishes).ladder!.resistors.map(({ ohm }) => ohm);
    const high = new Array<boolean>(5).fill(false);
    const input = board === 'atmega32u4' ? 7 : 0;
    // One resistor a channel: the mean of the gates' voltages by conductance. R and 2R: node after node.
    const outputVolts = (): number => {
      const gates = high.map((isHigh) => (isHigh ? 5 : 0));
      const legs = resistors.slice(0, 5);
      if (kind === 'weighted') {
        const sum = (of: (c: number) => number): number => legs.reduce((total, _, c) => total + of(c), 0);
        return sum((c) => gates[c]! / legs[c]!) / sum((c) => 1 / legs[c]!);
      }
      let [seenVolts, seenOhm] = [0, resistors[9]!];
      for (const [c, leg] of legs.entries()) {
        if (c > 0) seenOhm += resistors[4 + c]!;
        seenVolts = (seenVolts * leg + gates[c]! * seenOhm) / (leg + seenOhm);
        seenOhm = (seenOhm * leg) / (seenOhm + leg);
      }
      return seenVolts;
    };
    chip.beforeConversion = () => chip.setVolts(input, outputVolts());
    turnBothWays(chip, 32, (channel, isHigh) => void (high[channel] = isHigh), Number);
  });

  it('of ten channels behind two shift registers', async () => {
    const { chip, pin } = await chipFor({
      board,
      positions: 1024,
      input: 'shift-register',
      lineIntervalMs: 4,
    });
    const outside = registersOn(chip, { load: pin('load'), clock: pin('clock'), data: pin('data') });
    for (const k of [0, 1, 2, 3, 511, 512, 700, 1022, 1023]) {
      const word = wordOf(k, 10);
      for (const [channel, bit] of [...word].entries()) outside.set(channel, bit === '1');
      const line = freshLine(chip, 100);
      expect(line.word).toBe(word);
      expect(Math.abs(line.headingDeg! - headingOf(k, 1024))).toBeLessThanOrEqual(0.005 + 1e-9);
    }
  });
});

describe('lights that are lit for each read', () => {
  const pulsed: VaneWishes = { emitters: 'pulsed', detector: FAST_SENSOR, positions: 8, lineIntervalMs: 4 };

  /** Sensors that add daylight to what their own light gives, up to what the converter can read. */
  async function vane(wishes: VaneWishes) {
    const { chip, pin } = await chipFor({ ...pulsed, ...wishes });
    const own = [0, 0, 0];
    let daylight = 0;
    const isRise = (wishes.sensorTo ?? 'supply') === 'supply';
    chip.beforeConversion = (input) => {
      const light = Math.min(1023, daylight + (chip.isHigh(pin('lights')) ? own[input]! : 0));
      setCounts(chip, input, isRise ? light : 1023 - light);
    };
    const show = (word: string): void => [...word].forEach((bit, c) => (own[c] = bit === '1' ? 600 : 10));
    return { chip, show, setDaylight: (counts: number): void => void (daylight = counts) };
  }

  it.each(['supply', 'ground'] as const)(
    'read the same in daylight as in the dark, sensors to the %s',
    async (sensorTo) => {
      const { chip, show, setDaylight } = await vane({ sensorTo });
      for (const daylight of [0, 150, 400]) {
        setDaylight(daylight);
        for (let k = 0; k < 8; k++) {
          show(wordOf(k, 3));
          const line = freshLine(chip, 100);
          expect(line.word).toBe(wordOf(k, 3));
          expect(line.counts).toEqual(Array.from(wordOf(k, 3), (bit) => (bit === '1' ? 600 : 10)));
          expect(line.flags).not.toContain('daylight');
        }
      }
    },
  );

  it.each([
    ['supply', 'comparator'],
    ['ground', 'comparator'],
    ['supply', 'schmitt'],
    ['ground', 'schmitt'],
  ] as const)('read behind gates too, sensors to the %s and a %s each', async (sensorTo, gate) => {
    const { chip, pin, channelPins } = await chipFor({ ...pulsed, input: 'digital', sensorTo, gate });
    // Light makes the divider's voltage rise or fall with the sensor's side; a Schmitt inverter turns it round.
    const litIsHigh = (sensorTo === 'supply') !== (gate === 'schmitt');
    const own = [false, false, false];
    const show = (): void =>
      own.forEach((isOpen, c) => {
        const isLit = isOpen && chip.isHigh(pin('lights'));
        chip.setDigital(channelPins[c]!, isLit === litIsHigh);
      });
    let isWorking = false;
    chip.onPins = () => {
      if (isWorking) return; // setting a pin calls back
      isWorking = true;
      show();
      isWorking = false;
    };
    for (let k = 0; k < 8; k++) {
      [...wordOf(k, 3)].forEach((bit, c) => (own[c] = bit === '1'));
      expect(freshLine(chip, 100).word).toBe(wordOf(k, 3));
    }
  });

  it('say so when daylight leaves them no room, and stop saying it in the shade', async () => {
    const { chip, show, setDaylight } = await vane({});
    show('101');
    setDaylight(900);
    expect(freshLine(chip, 100).flags).toContain('daylight');
    setDaylight(100);
    const line = freshLine(chip, 100);
    expect(line.flags).not.toContain('daylight');
    expect(line.word).toBe('101');
  });
});
