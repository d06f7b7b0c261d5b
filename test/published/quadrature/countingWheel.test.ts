import { describe, expect, it } from 'vitest';
import { buildCode, codeProblems, codeProperties, wordAt } from '../../../src/core/codes/index.ts';

const POSITIONS = 32;
const wheel = buildCode('counting-wheel', POSITIONS);
const indexed = buildCode('counting-wheel', POSITIONS, { indexTrack: true });

/** A wheel turned to each angle in turn, read as a reader would: by the last position and the word. */
function follow(table: typeof wheel, anglesDeg: readonly number[], start: number | null): (number | null)[] {
  let last = start;
  return anglesDeg.map((angle) => (last = table.nextPosition(wordAt(table, angle), last)));
}

/** Angles over some positions, four looks a step, none on an edge. */
function sweep(from: number, to: number): number[] {
  const way = to > from ? 1 : -1;
  const looks = Math.abs(to - from) * 4;
  return Array.from({ length: looks }, (_, i) => ((from + way * (i + 0.5) * 0.25) * 360) / POSITIONS);
}

describe('a wheel that only counts', () => {
  it('shows the four states in turn, and says that it is not absolute', () => {
    expect(wheel.absolute).toBe(false);
    expect(wheel.words.slice(0, 8)).toEqual(['11', '10', '00', '01', '11', '10', '00', '01']);
    expect(wheel.words.map((word) => wheel.positionOf(word))).toEqual(Array(POSITIONS).fill(null));
  });

  it('counts by the printed table, both ways, and calls a change of both channels an error', () => {
    const next: Record<string, number> = {
      '0001': 1, '0111': 1, '1110': 1, '1000': 1, '0010': -1, '1011': -1, '1101': -1, '0100': -1,
    }; // prettier-ignore
    for (const [last, word] of wheel.words.entries()) {
      for (const seen of ['00', '01', '10', '11']) {
        const step = seen === word ? 0 : next[word + seen];
        const expected = step === undefined ? null : (last + step + POSITIONS) % POSITIONS;
        expect(wheel.nextPosition(seen, last), `${word} then ${seen}`).toBe(expected);
      }
    }
  });

  it('follows three turns forward and four back', () => {
    const forward = follow(wheel, sweep(0, 96), 0);
    expect(forward.at(-1)).toBe(31);
    expect(follow(wheel, sweep(96, -32), 31).at(-1)).toBe(0);
  });

  it('does not know where it is when it is switched on', () => {
    expect(wheel.nextPosition('11', null)).toBeNull();
  });

  it('keeps a wrong count for ever, and an index sets it right', () => {
    expect(follow(wheel, sweep(4, 64), 8).at(-1)).toBe(3); // four positions off, as at the start
    expect(follow(indexed, sweep(4, 64), 8).at(-1)).toBe(31);
  });
});

describe('an index track', () => {
  it('tells position 0 alone', () => {
    expect(indexed.words.map((word) => indexed.positionOf(word))).toEqual([
      0,
      ...Array(POSITIONS - 1).fill(null),
    ]);
    expect(indexed.nextPosition(indexed.words[0]!, null)).toBe(0);
  });

  it('never changes together with the count, and misreads nothing on its edges', () => {
    const { singleStep, worstErrorPositions, boundaries } = codeProperties(indexed);
    expect([singleStep, worstErrorPositions, boundaries.length]).toEqual([true, 0, POSITIONS + 2]);
    expect(follow(indexed, sweep(0, 64), 0).slice(0, 12)).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2]);
  });
});

it('stands its two sensors clear of one another where the wheel is fine', () => {
  const [first, second] = buildCode('counting-wheel', 360).channels;
  expect([first!.angleDeg, second!.angleDeg]).toEqual([0, 25]); // 1 + 6 * 4 steps of 1 degree
});

it('refuses a count that four does not divide', () => {
  expect(codeProblems('counting-wheel', 30)).toMatchObject([
    { code: 'codes/not-a-counting-wheel', fix: 'Set need.positions to 28 or 32.' },
  ]);
});
