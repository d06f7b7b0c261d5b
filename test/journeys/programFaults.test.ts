import { describe, expect, it } from 'vitest';
import { programFor } from '../../src/core/program/index.ts';
import type { Line } from '../../src/core/record/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  DARK_COUNTS,
  jettyHead,
  jettyInstrument,
  lineOf,
  LIT_COUNTS,
  setCounts,
  statusOf,
  type VaneWishes,
} from '../support/avrVane.ts';

const POSITIONS = 20;

/** Word of a step: Gray's formula, the middle words of the next full code. */
function wordOf(k: number): string {
  const g = 6 + (((k % POSITIONS) + POSITIONS) % POSITIONS);
  return (g ^ (g >> 1)).toString(2).padStart(5, '0');
}

/** Lines of a vane that goes through these steps, 20 ms each, its wiring changed by a fault. */
async function linesOf(steps: readonly number[], fault: (word: string) => string, wishes: VaneWishes = {}) {
  const all: VaneWishes = {
    positions: POSITIONS,
    turnRateDegPerS: 900,
    cups: null,
    lineIntervalMs: 5,
    ...wishes,
  };
  const instrument = jettyInstrument(all);
  const chip = new AvrChip((await buildAvr(programFor(instrument, jettyHead(instrument, all)).source)).hex);
  for (const k of steps) {
    for (const [channel, bit] of [...fault(wordOf(k))].entries()) {
      setCounts(chip, channel, bit === '1' ? LIT_COUNTS : DARK_COUNTS);
    }
    chip.runMs(20);
  }
  const lines: Line[] = chip.lines.slice(0, -1).map(lineOf);
  return { chip, lines, flags: new Set(lines.flatMap((line) => line.flags)) };
}

const turn = Array.from({ length: POSITIONS + 1 }, (_, k) => k);
const bothWays = [...turn, ...turn.toReversed(), ...turn];
const replaced = (word: string, channel: number, bit: string): string =>
  word.slice(0, channel) + bit + word.slice(channel + 1);

describe('a sound head', () => {
  it('raises no flag in three turns', async () => {
    const { flags } = await linesOf(bothWays, (word) => word);
    expect([...flags]).toEqual([]);
  });
});

describe('a stuck channel', () => {
  it.each([
    [1, '0'],
    [2, '1'],
    [3, '0'],
    [4, '0'],
    [4, '1'],
  ])('%i at level %s is flagged, and the status line names it', async (channel, bit) => {
    const { chip, flags } = await linesOf(bothWays, (word) => replaced(word, channel, bit));
    expect(flags.has('illegalWord') || flags.has('impossibleJump')).toBe(true);
    expect(flags.has('stuckChannel')).toBe(true);
    chip.say('settings');
    chip.runMs(20);
    expect(statusOf(chip.statuses.at(-1)!).stuck).toEqual([channel]);
  });

  it('that only mirrors the turn, as the first of a reflected code does, is found by a recorded turn alone', async () => {
    const stuck = (word: string): string => replaced(word, 0, '0');
    expect((await linesOf(bothWays, stuck)).flags.has('stuckChannel')).toBe(false);
    const { chip } = await linesOf([0], stuck);
    chip.say('turn');
    for (const k of turn) {
      for (const [channel, bit] of [...stuck(wordOf(k))].entries()) {
        setCounts(chip, channel, bit === '1' ? LIT_COUNTS : DARK_COUNTS);
      }
      chip.runMs(10);
    }
    chip.say('stop');
    chip.runMs(20);
    expect(statusOf(chip.statuses.at(-1)!).stuck).toEqual([0]);
  });
});

describe('two swapped channels', () => {
  it.each([
    [0, 1],
    [1, 3],
    [3, 4],
  ])('%i and %i do not pass for a sound head', async (a, b) => {
    const { flags, lines } = await linesOf(bothWays, (word) =>
      replaced(replaced(word, a, word[b]!), b, word[a]!),
    );
    expect(flags.has('illegalWord') || flags.has('impossibleJump')).toBe(true);
    for (const line of lines) expect(line.headingDeg === null).toBe(line.flags.includes('illegalWord'));
  });
});

describe('a light that is out from the start', () => {
  it('shows as all dark, and stops showing once any channel has been lit', async () => {
    const dark = await linesOf([0], () => '00000');
    expect([...dark.flags]).toContain('allDark');
    const lit = await linesOf([0], () => '11111');
    expect([...lit.flags]).toContain('allLight');
    const { chip } = dark;
    setCounts(chip, 1, LIT_COUNTS);
    chip.runMs(20);
    expect(lineOf(chip.lines.at(-2)!).flags).not.toContain('allDark');
  });
});

describe('a controller that sleeps', () => {
  // The emulator runs on through a sleep instruction; what it shows is the clockwork around the sleep.
  it('deeply, sends a line each interval with its clock carried on, and still obeys a recorded turn', async () => {
    const { chip, lines } = await linesOf([3], (word) => word, { sleep: 'deep', lineIntervalMs: 150 });
    chip.runMs(1200);
    const all = [...lines, ...chip.lines.slice(lines.length, -1).map(lineOf)];
    expect(all.length).toBeGreaterThan(5);
    for (const [i, line] of all.slice(1).entries()) {
      const since = line.sinceStartMs - all[i]!.sinceStartMs;
      expect(Math.abs(since - 150)).toBeLessThanOrEqual(16); // naps come in powers of two from 16 ms on
    }
    const realMs = chip.nowUs / 1000;
    expect(all.at(-1)!.sinceStartMs / realMs).toBeGreaterThan(0.8);
    expect(all.at(-1)!.sinceStartMs / realMs).toBeLessThan(1.1);
  });

  it('lightly, misses nothing', async () => {
    const { flags, lines } = await linesOf(bothWays, (word) => word, { sleep: 'idle' });
    expect([...flags]).toEqual([]);
    expect(new Set(lines.map(({ word }) => word)).size).toBe(POSITIONS);
  });
});
