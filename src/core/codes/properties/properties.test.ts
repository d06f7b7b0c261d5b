import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  boundaries,
  buildCode,
  codeProperties,
  codeTable,
  halfTurned,
  lightFaultsSeen,
  trackFromCells,
} from '../index.ts';

/** Every word a half-turned disc can show, made one by one: slow, and shares nothing with the code under test. */
function allHalfTurned(before: string, after: string): Set<string> {
  const found = new Set<string>();
  for (let mask = 0; mask < 2 ** before.length; mask++) {
    found.add([...before].map((level, c) => ((mask >> c) & 1 ? after[c] : level)).join(''));
  }
  return found;
}

describe('what a half-turned disc can show', () => {
  it('agrees with every word made one by one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 90 }), (positions) => {
        const table = buildCode('natural-binary', positions);
        for (const boundary of boundaries(table)) {
          const words = [...allHalfTurned(boundary.before, boundary.after)];
          const legal = words.filter((word) => parseInt(word, 2) < positions);
          const got = halfTurned(table, boundary);
          expect(got.words).toBe(words.length);
          expect(got.illegal).toBe(words.length - legal.length);
          expect(got.positions).toEqual(legal.map((word) => parseInt(word, 2)).sort((a, b) => a - b));
        }
      }),
      { seed: 74, numRuns: 25 },
    );
  });

  it('counts a word the code does not have apart from a wrong position', () => {
    // Natural binary of 5: 100 to 000 changes one track, 001 to 010 two (00 and 11 at the end), 011 to 100 three.
    const table = buildCode('natural-binary', 5);
    const seam = boundaries(table).find(({ positionBefore }) => positionBefore === 3)!;
    expect(halfTurned(table, seam)).toEqual({
      words: 8,
      illegal: 3,
      positions: [0, 1, 2, 3, 4],
      worstErrorPositions: 2,
    });
  });

  it('passes through the middle level only where levels are grey', () => {
    const table = codeTable('own', 3, {
      tracks: [trackFromCells([0, 1, 2], 3)],
      channels: [{ track: 0, angleDeg: 0 }],
    });
    const wrap = boundaries(table)[0]!;
    expect([wrap.before, wrap.after]).toEqual(['2', '0']);
    expect(halfTurned(table, wrap, 'unordered').positions).toEqual([0, 2]);
    expect(halfTurned(table, wrap, 'ordered')).toMatchObject({
      words: 3,
      positions: [0, 1, 2],
      worstErrorPositions: 1,
    });
  });
});

describe('what is true of a table', () => {
  it('counts the words left over and the two light faults', () => {
    const gray = codeProperties(buildCode('reflected-gray', 24));
    expect(gray.illegalWords).toBe(32 - 24);
    // 24 words from the middle of the five-bit code: 00110 to 10110, so 00000 is left out and 11111 is not.
    expect(gray.uniformWordIllegal).toEqual([true, false]);
    expect(lightFaultsSeen(gray, 1)).toEqual({ lampOff: true, flooded: false });
    expect(lightFaultsSeen(gray, 0)).toEqual({ lampOff: false, flooded: true });
  });

  it('is single-step for Gray and names where natural binary is not', () => {
    expect(codeProperties(buildCode('reflected-gray', 32)).singleStep).toBe(true);
    const binary = codeProperties(buildCode('natural-binary', 8));
    expect(binary.singleStep).toBe(false);
    expect(binary.multiStepBoundaries.map(({ positionAfter }) => positionAfter)).toEqual([0, 2, 4, 6]);
  });

  it('does not change when the head stands elsewhere', () => {
    const table = buildCode('natural-binary', 20);
    const turned = codeTable('natural-binary', 20, {
      ...table,
      channels: table.channels.map((channel) => ({ ...channel, angleDeg: 54 })), // 3 steps of 18 degrees
    });
    const [a, b] = [codeProperties(table), codeProperties(turned)];
    expect(b.worstErrorPositions).toBe(a.worstErrorPositions);
    expect(b.illegalWords).toBe(a.illegalWords);
    expect(b.tracks).toEqual(a.tracks);
  });

  it('reads shortest runs in degrees and in steps', () => {
    const { tracks } = codeProperties(buildCode('natural-binary', 8));
    expect(tracks.map((track) => track.shortestRunDeg)).toEqual([180, 90, 45]);
    expect(tracks.map((track) => track.shortestRunSteps)).toEqual([4, 2, 1]);
    expect(tracks.map((track) => track.transitions)).toEqual([2, 4, 8]);
  });
});
