import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  buildCode,
  codeProblems,
  codeTable,
  trackFromCells,
  type Level,
} from '../../../src/core/codes/index.ts';
import { factsOf, isCyclicSingleStep } from '../../support/codeChecker.ts';

const QUICK = { seed: 1, mostSteps: 300_000 };
const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

describe('the printed examples', () => {
  interface Example {
    readonly channels: number;
    readonly positions: number;
    readonly heads: readonly number[];
    readonly track: string;
    readonly shortestRun: number;
  }
  const examples = JSON.parse(read('./wikipedia.json')) as Example[];

  it.each(examples)(
    'shows one change a step for $positions positions',
    ({ positions, heads, track, shortestRun }) => {
      const table = codeTable('own', positions, {
        tracks: [trackFromCells([...track].map((cell) => Number(cell) as Level))],
        channels: heads.map((head) => ({ track: 0, angleDeg: (head * 360) / positions })),
      });
      expect(isCyclicSingleStep(table.words)).toBe(true);
      expect(factsOf(table.words)).toMatchObject({ oneTrack: true, shortestRun });
    },
  );

  it('is beaten in shortest mark: seven steps against two, for 360 positions on nine channels', () => {
    const { words, channels, tracks } = buildCode('single-track-gray', 360, { channels: 9 }, QUICK);
    expect([tracks.length, channels.length]).toEqual([1, 9]);
    expect(isCyclicSingleStep(words)).toBe(true);
    expect(factsOf(words)).toMatchObject({ oneTrack: true });
    expect(factsOf(words).shortestRun).toBeGreaterThanOrEqual(7);
  });
});

describe('the most positions', () => {
  it.each([
    [3, 6],
    [4, 8],
    [5, 30],
    [6, 60],
    [7, 126],
    [8, 240],
    [9, 504],
    [10, 1020],
    [11, 2046],
    [12, 4056],
  ])('reaches the known best with %i channels: %i', (channels, positions) => {
    const { words, tracks } = buildCode('single-track-gray', positions, { channels }, QUICK);
    expect(tracks).toHaveLength(1);
    expect(isCyclicSingleStep(words)).toBe(true);
    expect(factsOf(words).oneTrack).toBe(true);
  });

  it.each([
    [6, 48],
    [8, 224],
    [10, 960],
  ])('with %i heads spread evenly is %i', (channels, positions) => {
    const even = { channels, headPlacement: 'even' } as const;
    const table = buildCode('single-track-gray', positions, even, QUICK);
    expect(isCyclicSingleStep(table.words)).toBe(true);
    expect(table.channels.map(({ angleDeg }) => angleDeg)).toEqual(
      Array.from({ length: channels }, (_, c) => (c * 360) / channels),
    );
    for (let more = positions + 2; more <= 2 ** channels; more += 2) {
      expect(codeProblems('single-track-gray', more, even)).not.toEqual([]);
    }
  });

  it('with four channels is eight, and nothing else is possible', () => {
    for (let positions = 2; positions <= 16; positions++) {
      expect(codeProblems('single-track-gray', positions, { channels: 4 }).length === 0).toBe(
        positions === 8,
      );
    }
  });
});

it('makes every count another search has found for 2 to 11 channels', () => {
  const [, ...rows] = read('./lengths.csv').trim().split('\n');
  const counts = rows.map((row) => row.split(',').map(Number) as [number, number]);
  expect(counts.length).toBeGreaterThan(180);
  for (const [i, [channels, positions]] of counts.entries()) {
    if (channels === 11 && i % 8 !== 0) continue; // these take longer; a sample of them in every run
    const mostSteps = channels < 11 ? 30_000 : 300_000;
    const { words } = buildCode('single-track-gray', positions, { channels }, { seed: 3, mostSteps });
    expect(isCyclicSingleStep(words), `${positions} on ${channels}`).toBe(true);
  }
});
