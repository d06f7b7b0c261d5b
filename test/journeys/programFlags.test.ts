import { beforeAll, describe, expect, it } from 'vitest';
import { codeTable } from '../../src/core/codes/index.ts';
import { programFor } from '../../src/core/program/index.ts';
import { lineFlags, type LineFlag } from '../../src/core/record/index.ts';
import { buildAvr, type AvrProgram } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  DARK_COUNTS,
  freshLine,
  jettyHead,
  jettyInstrument,
  lineOf,
  LIT_COUNTS,
  setCounts,
} from '../support/avrVane.ts';

// Six sensors 30 degrees apart over one half-open track: word p has its ones where 30p + 15 + 30c is below 180.
// At 1500 degrees a second, 30 degrees take 20 ms and half a turn 120 ms.
const wishes = { positions: 12, turnRateDegPerS: 1500, lineIntervalMs: 4 };
const tracks = [{ levelCount: 2 as const, startsDeg: [0, 180], levels: [1, 0] as const }];
const channels = Array.from({ length: 6 }, (_, c) => ({ track: 0, angleDeg: 30 * c }));
const code = codeTable('half-ring', 12, { tracks, channels });

const wordOf = (position: number): string =>
  Array.from({ length: 6 }, (_, c) => ((30 * (position + c) + 15) % 360 < 180 ? '1' : '0')).join('');
const NOT_ON_DISC = '101010';

let program: AvrProgram;

function show(chip: AvrChip, word: string): void {
  for (const [channel, bit] of [...word].entries())
    setCounts(chip, channel, bit === '1' ? LIT_COUNTS : DARK_COUNTS);
}

function setCounter(chip: AvrChip, name: string, value: number): void {
  chip.setMemory(program.symbols.get(name)! - 0x800000, Math.floor(value));
}

/** A chip that has read position 0 for some lines, and the flags of all lines from here on. */
function started(): { chip: AvrChip; flagsSince: () => LineFlag[] } {
  const chip = new AvrChip(program.hex);
  show(chip, wordOf(1)); // word 0 is all light, which alone could be no disc
  chip.runMs(4);
  show(chip, wordOf(0));
  chip.runMs(12);
  const first = chip.lines.length - 1;
  return { chip, flagsSince: () => chip.lines.slice(first, -1).flatMap((text) => lineOf(text).flags) };
}

describe('what a line says about itself', () => {
  beforeAll(async () => {
    const instrument = jettyInstrument(wishes);
    program = await buildAvr(programFor(instrument, jettyHead(instrument, { ...wishes, code })).source);
  });

  it('has no flag at the start, where there was nothing to jump from', () => {
    const chip = new AvrChip(program.hex);
    show(chip, wordOf(7));
    chip.runMs(12);
    expect(chip.lines.slice(0, -1).flatMap((text) => lineOf(text).flags)).toEqual([]);
  });

  it('reports a jump once, and goes on with the new heading', () => {
    const { chip, flagsSince } = started();
    show(chip, wordOf(5));
    chip.runMs(20);
    expect(flagsSince()).toEqual(['impossibleJump']);
    expect(freshLine(chip).word).toBe(wordOf(5));
  });

  it('takes one step at a time as a turn, also over the index mark', () => {
    const { chip, flagsSince } = started();
    for (const position of [1, 0, 11, 10, 11, 0]) {
      show(chip, wordOf(position));
      chip.runMs(3);
    }
    chip.runMs(8);
    expect(flagsSince()).toEqual([]);
  });

  it('tells of a word the disc does not have that came and went between two lines', () => {
    const { chip, flagsSince } = started();
    chip.runUntil(() => chip.lines.at(-1)!.length > 0, 10); // a line has just been written: 4 ms to the next
    show(chip, NOT_ON_DISC);
    chip.runMs(1.5);
    show(chip, wordOf(0));
    chip.runMs(16);
    expect(flagsSince()).toEqual(['illegalBefore']);
  });

  it('does not call it a jump when the vane had the time while it could not be read', () => {
    const { chip, flagsSince } = started();
    show(chip, NOT_ON_DISC);
    chip.runMs(65); // three steps of 20 ms
    show(chip, wordOf(4));
    chip.runMs(12);
    expect(flagsSince()).toContain('illegalWord');
    expect(flagsSince()).not.toContain('impossibleJump');
  });

  it('calls it a jump when the vane had not the time while it could not be read', () => {
    const { chip, flagsSince } = started();
    show(chip, NOT_ON_DISC);
    chip.runMs(10);
    show(chip, wordOf(4));
    chip.runMs(12);
    expect(flagsSince()).toContain('impossibleJump');
  });

  it('forgets where the vane was, also when it could not be read for over an hour', () => {
    const { chip, flagsSince } = started();
    show(chip, NOT_ON_DISC);
    chip.runMs(4);
    // After 2^32 us the elapsed time no longer fits 32 bits as microseconds: 71.6 minutes.
    setCounter(chip, 'timer0_millis', 2 ** 32 / 1000 + 12);
    setCounter(chip, 'lastLineMs', 2 ** 32 / 1000 + 12);
    chip.runMs(8);
    show(chip, wordOf(6));
    chip.runMs(12);
    expect(flagsSince()).toContain('illegalWord');
    expect(flagsSince()).not.toContain('impossibleJump');
  });

  it('counts on when the milliseconds start again after 49.7 days', () => {
    const chip = new AvrChip(program.hex);
    show(chip, wordOf(3));
    chip.runMs(2);
    setCounter(chip, 'timer0_millis', 2 ** 32 - 30);
    setCounter(chip, 'lastLineMs', 2 ** 32 - 30);
    chip.runMs(60);
    const lines = chip.lines.slice(0, -1).map(lineOf);
    expect(lines.length).toBeGreaterThan(10);
    expect(lines[0]!.sinceStartMs).toBeGreaterThan(2 ** 32 - 30);
    expect(lines.at(-1)!.sinceStartMs).toBeLessThan(100);
    for (const [i, line] of lines.slice(1).entries()) {
      const since = (line.sinceStartMs - lines[i]!.sinceStartMs + 2 ** 32) % 2 ** 32;
      expect(Math.abs(since - wishes.lineIntervalMs)).toBeLessThanOrEqual(2);
      expect(line.flags).toEqual([]);
    }
  });

  it('sends every flag there is in these cases', () => {
    const elsewhere = ['interpolated', 'stuckChannel', 'allDark', 'allLight', 'daylight', 'turnRecording'];
    expect(Object.keys(lineFlags)).toEqual(['impossibleJump', 'illegalBefore', 'illegalWord', ...elsewhere]);
  });
});
