import { describe, expect, it } from 'vitest';
import {
  buildCode,
  codeTable,
  deadChannels,
  strangerDistance,
  trackFromCells,
  type CodeTable,
} from '../index.ts';

/** A table with one track for each row of cells. */
function tableOf(...rows: string[]): CodeTable {
  const tracks = rows.map((row) => trackFromCells([...row].map((cell) => Number(cell) as 0 | 1)));
  return codeTable('own', rows[0]!.length, {
    tracks,
    channels: tracks.map((_, track) => ({ track, angleDeg: 0 })),
  });
}

/** Least distance by comparing every pair, for a second opinion. */
function bySight({ words, positions }: CodeTable): number {
  let least = Infinity;
  for (let a = 0; a < positions; a++) {
    for (let b = a + 2; b < positions - (a === 0 ? 1 : 0); b++) {
      least = Math.min(least, [...words[a]!].filter((level, c) => level !== words[b]![c]).length);
    }
  }
  return least;
}

describe('a dead channel', () => {
  it('halves natural binary of eight, each position right or as many off as its channel weighs', () => {
    const faults = deadChannels(buildCode('natural-binary', 8));
    expect(faults).toHaveLength(6);
    for (const [i, weight] of [4, 4, 2, 2, 1, 1].entries()) {
      expect(faults[i]).toMatchObject({
        right: 4,
        seen: 0,
        wrong: 4,
        worstErrorPositions: weight,
        toldApart: 4,
      });
    }
  });

  it('is mostly seen on a ring of switches', () => {
    // A switch that never closes: where two should close, one does, a neighbour; where it should close alone, none does.
    const [open] = deadChannels(buildCode('switch-ring', 16));
    expect(open).toEqual({
      channel: 0,
      level: 0,
      right: 13,
      seen: 1,
      wrong: 2,
      worstErrorPositions: 1,
      toldApart: 14,
    });
  });

  it('never adds or loses a position', () => {
    for (const name of ['reflected-gray', 'balanced-gray', 'vernier', 'ternary-modular', 'counting-wheel']) {
      const table = buildCode(name, 40);
      for (const { right, seen, wrong } of deadChannels(table)) expect(right + seen + wrong, name).toBe(40);
    }
  });
});

describe('how far apart positions are that are no neighbours', () => {
  it('is one channel for full codes', () => {
    expect(strangerDistance(buildCode('reflected-gray', 16))).toBe(1);
    expect(strangerDistance(buildCode('natural-binary', 32))).toBe(1);
  });

  it('agrees with every pair compared, where the distance is larger too', () => {
    // A window of half the turn on six channels: words k apart differ in min(k, 12 - k) channels, so strangers in two.
    const ring = tableOf(
      '111111000000',
      '011111100000',
      '001111110000',
      '000111111000',
      '000011111100',
      '000001111110',
    );
    expect([strangerDistance(ring), bySight(ring)]).toEqual([2, 2]);
    for (const [name, positions] of [
      ['switch-ring', 16],
      ['vernier', 32],
      ['long-run-gray', 24],
      ['single-track-gray', 30],
    ] as const) {
      const table = buildCode(name, positions, {}, { seed: 1, mostSteps: 50_000 });
      expect(strangerDistance(table), name).toBe(bySight(table));
    }
  });

  it('is not told for a wheel that only counts, nor where all are neighbours', () => {
    expect(strangerDistance(buildCode('counting-wheel', 32))).toBeNull();
    expect(strangerDistance(buildCode('natural-binary', 3))).toBeNull();
  });

  it('finds three where every position repeats its word three times', () => {
    const thrice = ['00001111', '00110011', '01010101'].flatMap((row) => [row, row, row]);
    expect(strangerDistance(tableOf(...thrice))).toBe(3);
  });
});
