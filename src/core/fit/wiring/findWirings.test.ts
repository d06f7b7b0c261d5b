import { describe, expect, it } from 'vitest';
import { walkedCode, type WalkedColumns } from '../../../../test/support/walkedCode.ts';
import { buildCode } from '../../codes/index.ts';
import { codeWalk } from './codeWalk.ts';
import { findWirings, type Wiring } from './findWirings.ts';

/** Whether a wiring is the one that was drawn, columns and inversions. */
function isTruth(wiring: Wiring, { columns, inverted }: WalkedColumns): boolean {
  return wiring.channels.every(
    (wire, c) => wire !== null && columns[wire.column] === c && wire.inverted === inverted[wire.column],
  );
}

const every = (channels: number): number => (2 ** channels - 1) >>> 0;

describe('the search for the wires', () => {
  it.each([
    ['reflected-gray', 32],
    ['reflected-gray', 4096],
    ['reflected-gray', 360],
    ['natural-binary', 256],
    ['single-track-gray', 30],
    ['single-track-gray', 360],
    ['long-run-gray', 256],
  ] as const)('finds them for %s with %i positions, both ways round', (family, positions) => {
    const code = buildCode(family, positions);
    const channels = code.channels.length;
    const walk = codeWalk(code);
    for (const [seed, turns] of [
      [1, 1.05],
      [2, -1.05],
    ] as const) {
      const walked = walkedCode(code, Math.round(turns * positions), seed);
      const found = findWirings(walk, [walked], every(channels), channels);
      expect(
        found.some((wiring) => isTruth(wiring, walked)),
        `seed ${seed}`,
      ).toBe(true);
      // All that are left explain the same: they are the code's own likenesses with itself.
      expect(found.every(({ undecided }) => undecided.length === 0)).toBe(true);
      expect(found.length).toBeLessThanOrEqual(family === 'single-track-gray' ? 2 * channels : 16);
    }
  });

  it('leaves open what a piece of a turn does not tell', () => {
    const code = buildCode('reflected-gray', 32);
    const walked = walkedCode(code, 5, 3);
    const found = findWirings(codeWalk(code), [walked], every(5), 5);
    expect(found.length).toBeGreaterThan(16);
  });

  it('names the channel that no column shows', () => {
    const code = buildCode('balanced-gray', 32);
    const walked = walkedCode(code, 40, 4);
    const dead = walked.columns.indexOf(2);
    const live = every(5) & ~(1 << dead);
    const moves = walked.moves
      .map((move) => ({ ...move, changed: move.changed & live, to: move.to & live }))
      .filter(({ changed }) => changed !== 0);
    const found = findWirings(codeWalk(code), [{ firstBits: walked.firstBits & live, moves }], live, 5);
    const right = found.filter((wiring) => wiring.channels[2] === null);
    expect(right.length).toBeGreaterThan(0);
    expect(
      right.some((wiring) =>
        wiring.channels.every((wire, c) => c === 2 || (wire !== null && walked.columns[wire.column] === c)),
      ),
    ).toBe(true);
  });
});
