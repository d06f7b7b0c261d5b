import { describe, expect, it } from 'vitest';
import { buildCode, codeProblems, codeProperties, wordAt } from '../../../src/core/codes/index.ts';
import { factsOf } from '../../support/codeChecker.ts';

const BARE = { clockTrack: false };

/** Steps after which a register with these taps is back at its first state. */
function periodOf(taps: readonly number[], stages: number): number {
  const first = '1'.repeat(stages);
  let state = first;
  for (let steps = 1; ; steps++) {
    const next = taps.reduce((sum, tap) => sum ^ Number(state[stages - tap]), 0);
    state = state.slice(1) + next;
    if (state === first) return steps;
  }
}

describe('the printed taps', () => {
  it.each([
    [3, [3, 2]],
    [4, [4, 3]],
    [5, [5, 3]],
    [6, [6, 5]],
    [7, [7, 6]],
    [8, [8, 6, 5, 4]],
    [9, [9, 5]],
    [10, [10, 7]],
    [11, [11, 9]],
    [12, [12, 11, 10, 4]],
  ])('of %i stages run through every word but zero, and make the full disc', (stages, taps) => {
    const positions = 2 ** stages - 1;
    expect(periodOf(taps, stages)).toBe(positions);
    const { words } = buildCode('shift-register', positions, BARE);
    const track = words.map((word) => Number(word[0]));
    for (let k = 0; k < positions; k++) {
      const sum = taps.reduce((xor, tap) => xor ^ track[(k - tap + positions) % positions]!, 0);
      expect(track[k]).toBe(sum);
    }
  });
});

describe('one window of neighbouring cells', () => {
  it('is different at every position, for every count up to 1024 and the largest', () => {
    for (let positions = 2; positions <= 4096; positions += positions < 1024 ? 1 : 512) {
      const { words, tracks, channels } = buildCode('shift-register', positions, BARE);
      expect(new Set(words).size, String(positions)).toBe(positions);
      expect([tracks.length, channels.length]).toEqual([1, Math.max(1, (positions - 1).toString(2).length)]);
    }
  });

  it('moves on by one cell at every step', () => {
    for (const positions of [12, 25, 32, 100, 365, 1000]) {
      const { words } = buildCode('shift-register', positions, BARE);
      for (const [k, word] of words.entries()) {
        expect(words[(k + 1) % positions]!.slice(0, -1)).toBe(word.slice(1));
      }
    }
  });

  it('changes about half its channels at once', () => {
    // Half the cells of a maximal-length sequence differ from the next: 9 * 256 changes in 511 steps.
    const { changes } = factsOf(buildCode('shift-register', 511, BARE).words);
    expect(changes.reduce((a, b) => a + b, 0)).toBe(9 * 256);
    expect(Math.max(...changes)).toBeGreaterThan(5);
  });
});

describe('the clock track', () => {
  it('is lit in the middle of every step and never where the word changes', () => {
    const table = buildCode('shift-register', 25);
    expect(table.strobe).toEqual({ channel: 5, level: 1 });
    for (let k = 0; k < 25; k++) {
      const at = (steps: number): string => wordAt(table, ((k + steps) * 360) / 25)[5]!;
      expect([at(0.02), at(0.24), at(0.26), at(0.5), at(0.74), at(0.76), at(0.98)].join('')).toBe('0011100');
    }
  });

  it('keeps the last position between two strobes, so no boundary misreads', () => {
    const table = buildCode('shift-register', 25);
    const { worstErrorPositions, singleStep } = codeProperties(table);
    expect([worstErrorPositions, singleStep]).toEqual([0, false]);
    expect(table.nextPosition(table.words[7]!, 3)).toBe(7);
    const unlit = `${table.words[7]!.slice(0, 5)}0`;
    expect([table.nextPosition(unlit, 3), table.nextPosition(unlit, null), table.positionOf(unlit)]).toEqual([
      3,
      null,
      null,
    ]);
  });

  it('is missed where it is left out', () => {
    expect(codeProperties(buildCode('shift-register', 25, BARE)).worstErrorPositions).toBeGreaterThan(5);
  });
});

it('refuses channels that do not fit the count', () => {
  expect(codeProblems('shift-register', 25, { channels: 4 })).toMatchObject([
    { code: 'codes/too-few-channels' },
  ]);
});
