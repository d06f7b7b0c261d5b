import { describe, expect, it } from 'vitest';
import { QUIET_CIRCUIT } from '../../../../test/support/handHead.ts';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import type { Recording } from '../reading/recording.ts';
import { columnLevels } from './channelLevels.ts';
import { densest, medianOf, sturdySigma } from './spread.ts';
import { prepared } from '../wiring/understood.ts';

const settings = { circuit: QUIET_CIRCUIT, scaleCounts: 1024 };

/** A square wave of so many samples each way, with noise and soft edges. */
function wave(low: number, high: number, noise: number, seed: number, samples = 1200): number[] {
  const random = draws(seed);
  return Array.from({ length: samples }, (_, i) => {
    const phase = (i % 80) / 80;
    const share =
      phase < 0.45 ? 0 : phase < 0.5 ? (phase - 0.45) / 0.05 : phase < 0.95 ? 1 : (1 - phase) / 0.05;
    return Math.round(low + share * (high - low) + noise * normal(random));
  });
}

function recording(...files: readonly (readonly (readonly number[])[])[]): Recording {
  return {
    content: 'counts',
    columns: files[0]!.map((_, c) => `a${c}`),
    repairs: [],
    hasTimes: true,
    stretches: files.map((columns, f) => ({
      file: `file ${f}`,
      fromLine: 1,
      timesMs: columns[0]!.map((_, i) => 10 * i),
      rows: columns[0]!.map((_, i) => columns.map((column) => column[i]!)),
      marksDeg: columns[0]!.map(() => null),
      turned: null,
    })),
  };
}

describe('levels of a recorded column', () => {
  it('are those it stays at, whatever the edges and a few wild samples do', () => {
    const column = wave(100, 900, 5, 1).map((counts, i) => (i % 400 === 37 ? 1023 : counts));
    const [level] = columnLevels(recording([column]), settings);
    expect(Math.abs(level!.lowPlateau - 100)).toBeLessThan(3);
    expect(Math.abs(level!.highPlateau - 900)).toBeLessThan(3);
    expect(Math.abs(level!.noiseCounts - 5)).toBeLessThan(1);
    expect(level!.verdict).toBe('good');
    expect(Math.abs((level!.lowCounts + level!.highCounts) / 2 - 500)).toBeLessThan(6);
  });

  it.each([
    ['weak', wave(100, 190, 2, 2)],
    ['dead', wave(90, 90, 3, 3)],
    ['stuck', wave(940, 940, 3, 4)],
  ] as const)('are called %s', (verdict, column) => {
    const levels = columnLevels(recording([wave(100, 900, 3, 9), column]), settings);
    expect(levels.map((level) => level.verdict)).toEqual(['good', verdict]);
  });

  it('serve shade and sun with one threshold, or say that none does', () => {
    const shade = [wave(100, 900, 3, 5), wave(100, 900, 3, 6)];
    const sun = [wave(400, 950, 3, 7), wave(905, 960, 3, 8)];
    const [both, drowned] = columnLevels(recording(shade, sun), settings);
    expect(both!.verdict).toBe('good');
    expect(both!.lowCounts).toBeGreaterThan(400 + 9);
    expect(both!.highCounts).toBeLessThan(900 - 9);
    expect(drowned!.verdict).toBe('saturated');
  });

  it('tell a drift', () => {
    const column = wave(100, 900, 3, 1).map((counts, i) => counts + i / 20);
    const [level] = columnLevels(recording([column]), settings);
    expect(level!.driftCounts[0]).toBeGreaterThan(30);
  });

  it('are called tied where two columns move together', () => {
    const ready = prepared(recording([wave(100, 900, 3, 1), wave(80, 700, 3, 2)]), settings);
    expect(ready.columns.map(({ verdict, tiedTo }) => [verdict, tiedTo])).toEqual([
      ['good', null],
      ['tied', 0],
    ]);
  });

  it('lose single wild samples, each listed', () => {
    const column = wave(100, 900, 3, 1);
    column[20] = 1000;
    const ready = prepared(recording([column]), settings);
    expect(ready.recording.repairs.map(({ kind }) => kind)).toEqual(['spike']);
    expect(ready.changes[0]).toHaveLength(2 * 15);
  });
});

describe('spread', () => {
  it('has the middle, the sturdy deviation and the densest place', () => {
    expect(medianOf([3, 1, 2])).toBe(2);
    expect(medianOf([4, 1, 2, 3])).toBe(2.5);
    expect(medianOf([])).toBe(0);
    const random = draws(11);
    const values = Array.from({ length: 4000 }, () => 7 + 2 * normal(random));
    expect(Math.abs(sturdySigma([...values, 1e9]) - 2)).toBeLessThan(0.15);
    expect(densest(Float64Array.from([1, 2, 50, 50.1, 50.2, 90]))).toBeCloseTo(50.1, 1);
  });
});
