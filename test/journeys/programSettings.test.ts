import { beforeAll, describe, expect, it } from 'vitest';
import { programFor } from '../../src/core/program/index.ts';
import type { StatusLine } from '../../src/core/record/index.ts';
import { buildAvr, type AvrProgram } from '../support/avrBuild.ts';
import { AvrChip, freshEeprom, type ChipWishes } from '../support/avrChip.ts';
import {
  DARK_COUNTS,
  freshLine,
  HIGH_COUNTS,
  jettyHead,
  jettyInstrument,
  lineOf,
  LIT_COUNTS,
  LOW_COUNTS,
  setCounts,
  statusOf,
} from '../support/avrVane.ts';

let program: AvrProgram;
beforeAll(async () => {
  const instrument = jettyInstrument({ lineIntervalMs: 5, northOffsetDeg: 10 });
  program = await buildAvr(programFor(instrument, jettyHead(instrument)).source);
});

/** Word 00001 is the second step of the turn. */
function started(wishes: ChipWishes = {}): AvrChip {
  const chip = new AvrChip(program.hex, wishes);
  for (let input = 0; input < 5; input++) setCounts(chip, input, input === 4 ? LIT_COUNTS : DARK_COUNTS);
  chip.runUntil(() => chip.statuses.length > 0, 20);
  return chip;
}

/** What the chip answers to a command. */
function answer(chip: AvrChip, command: string, mostMs = 400): StatusLine {
  const before = chip.statuses.length;
  chip.say(command);
  chip.runUntil(() => chip.statuses.length > before, mostMs);
  return statusOf(chip.statuses.at(-1)!);
}

const drawn = { low: LOW_COUNTS - 1, high: HIGH_COUNTS };

describe('the status line', () => {
  it.each(['power', 'outside', 'brownOut', 'watchdog', 'unknown'] as const)(
    'says why it started: %s',
    (start) => {
      const status = statusOf(started({ start }).statuses[0]!);
      expect(status.start).toBe(start);
    },
  );

  it('says what the program reads by, before any command', () => {
    const status = statusOf(started().statuses[0]!);
    expect(status).toMatchObject({ kept: false, northDeg: 10, stuck: [] });
    expect(status.thresholds).toEqual(new Array(5).fill(drawn));
    expect(status.table).toMatch(/^[\da-f]{8}$/);
  });
});

describe('a command', () => {
  it('sets north at once, and keeps it without power', () => {
    const chip = started();
    const before = freshLine(chip).headingDeg!;
    expect(answer(chip, 'north 123.45')).toMatchObject({ kept: true, northDeg: 123.45 });
    const after = freshLine(chip).headingDeg!;
    expect((after - before + 720) % 360).toBeCloseTo(113.45, 6);
    const again = started({ eeprom: chip.eeprom });
    expect(statusOf(again.statuses[0]!)).toMatchObject({ kept: true, northDeg: 123.45 });
    expect(freshLine(again).headingDeg).toBe(after);
  });

  it('sets the thresholds of one channel at once, and keeps them', () => {
    const chip = started();
    expect(freshLine(chip).word).toBe('00001');
    const status = answer(chip, `thresholds 4 ${LIT_COUNTS + 5} ${LIT_COUNTS + 40}`);
    expect(status.thresholds[4]).toEqual({ low: LIT_COUNTS + 5, high: LIT_COUNTS + 40 });
    expect(status.thresholds.slice(0, 4)).toEqual(new Array(4).fill(drawn));
    expect(freshLine(chip).word).toBe('00000');
    expect(freshLine(started({ eeprom: chip.eeprom })).word).toBe('00000');
  });

  it('forget goes back to what the program was made with, for good', () => {
    const chip = started();
    answer(chip, 'north 200');
    answer(chip, 'north 201.5');
    expect(answer(chip, 'forget')).toMatchObject({ kept: false, northDeg: 10 });
    expect(statusOf(started({ eeprom: chip.eeprom }).statuses[0]!)).toMatchObject({
      kept: false,
      northDeg: 10,
    });
  });

  it.each([
    'north 360',
    'north -1',
    'north 12.',
    'north 12.345',
    'north 1e2',
    'north',
    'north ',
    'north 999999',
    'thresholds 5 400 500',
    'thresholds 0 500 500',
    'thresholds 0 600 500',
    'thresholds 0 400 1024',
    'thresholds 0 400',
    'thresholds 0 400 500 600',
    'thresholds  0 400 500',
    'Settings',
    'forget ',
    'forgets',
    'x',
    'north 12'.padEnd(32, '0'),
    'x'.repeat(300),
  ])('that is not understood changes nothing and is still answered: "%s"', (command) => {
    const chip = started();
    expect(answer(chip, command, 2000)).toEqual({ ...statusOf(chip.statuses[0]!) });
    expect([...chip.eeprom].every((byte) => byte === 0xff)).toBe(true);
  });

  it('is taken with a carriage return too, and an empty line is not answered', () => {
    const chip = started();
    expect(answer(chip, 'north 5\r').northDeg).toBe(5);
    chip.say('');
    chip.runMs(20);
    expect(chip.statuses).toHaveLength(2);
  });
});

describe('a recorded turn', () => {
  it('sends lines as fast as they go, marked, until it is stopped', () => {
    const chip = started();
    chip.runMs(10);
    answer(chip, 'turn');
    const first = chip.lines.length;
    chip.runMs(40);
    const lines = chip.lines.slice(first, -1).map(lineOf);
    expect(lines.length).toBeGreaterThan(40 / 5 + 1);
    expect(lines.every(({ flags }) => flags.includes('turnRecording'))).toBe(true);
    answer(chip, 'stop');
    expect(freshLine(chip).flags).not.toContain('turnRecording');
  });

  it('names the channel that stood still while the others changed, until it changes', () => {
    const chip = started();
    answer(chip, 'turn');
    for (let k = 0; k < 32; k++) {
      const word = (k ^ (k >> 1)).toString(2).padStart(5, '0');
      for (let input = 0; input < 5; input++) {
        setCounts(chip, input, input !== 1 && word[input] === '1' ? LIT_COUNTS : DARK_COUNTS);
      }
      chip.runMs(3);
    }
    expect(answer(chip, 'stop').stuck).toEqual([1]);
    expect(freshLine(chip).flags).toContain('stuckChannel');
    setCounts(chip, 1, LIT_COUNTS);
    freshLine(chip);
    expect(answer(chip, 'settings').stuck).toEqual([]);
  });

  it('ends by itself after ten minutes', () => {
    const chip = started();
    answer(chip, 'turn');
    chip.setMemory(program.symbols.get('turnBeganMs')! - 0x800000, 2 ** 32 - 600_000);
    chip.runMs(5);
    expect(freshLine(chip).flags).not.toContain('turnRecording');
  });
});

describe('a supply that fails while settings are written', () => {
  it('leaves the old ones or the new ones, whole, whenever it fails', () => {
    const chip = started();
    answer(chip, 'north 100');
    const before = chip.eeprom.slice();
    const next = (): AvrChip => started({ eeprom: before.slice() });
    // How long one writing takes, so that the supply can fail at every part of it.
    const whole = next();
    const from = whole.nowUs;
    answer(whole, 'north 200');
    const longMs = (whole.nowUs - from) / 1000;
    const found = new Set<number>();
    for (let share = 0; share < 1; share += 1 / 24) {
      const cut = next();
      cut.say('north 200');
      cut.runMs(Math.max(0.1, share * longMs));
      const status = statusOf(started({ eeprom: cut.eeprom, start: 'brownOut' }).statuses[0]!);
      expect(status.kept).toBe(true);
      expect(status.thresholds).toEqual(new Array(5).fill(drawn));
      found.add(status.northDeg);
    }
    expect([...found].sort((a, b) => a - b)).toEqual([100, 200]);
  });

  it('is not fooled by memory full of other bytes, nor by one spoilt copy', () => {
    const chip = started();
    answer(chip, 'north 100');
    answer(chip, 'north 200');
    for (const spoil of [0, 40]) {
      const eeprom = chip.eeprom.slice();
      eeprom[spoil]! ^= 0x10;
      const status = statusOf(started({ eeprom }).statuses[0]!);
      expect([100, 200]).toContain(status.northDeg);
    }
    for (const fill of [0, 0x55]) {
      const status = statusOf(started({ eeprom: freshEeprom().fill(fill) }).statuses[0]!);
      expect(status).toMatchObject({ kept: false, northDeg: 10 });
    }
  });

  it('does not take the settings of a program with other thresholds', async () => {
    const chip = started();
    answer(chip, 'north 100');
    const instrument = jettyInstrument({ lineIntervalMs: 5, northOffsetDeg: 11 });
    const { hex } = await buildAvr(programFor(instrument, jettyHead(instrument)).source);
    const other = new AvrChip(hex, { eeprom: chip.eeprom });
    other.runUntil(() => other.statuses.length > 0, 20);
    expect(statusOf(other.statuses[0]!)).toMatchObject({ kept: false, northDeg: 11 });
  });
});

describe('a program that hangs', () => {
  it('is started again by its watchdog within about two seconds, says so, and reads on', () => {
    const chip = started();
    answer(chip, 'north 33');
    chip.converts = false; // the converter never answers
    chip.runMs(300);
    const silent = chip.lines.length;
    chip.runMs(300);
    expect(chip.lines.length).toBe(silent);
    chip.after(1_200_000, () => (chip.converts = true));
    chip.runUntil(() => chip.statuses.length > 2, 4000);
    expect(statusOf(chip.statuses.at(-1)!)).toMatchObject({ start: 'watchdog', northDeg: 33 });
    const since = chip.lines.length;
    chip.runMs(30);
    const [line] = chip.lines.slice(since, -1).map(lineOf);
    expect(line!.word).toBe('00001');
    expect(line!.sinceStartMs).toBeLessThan(100); // counted from the new start
  });
});
