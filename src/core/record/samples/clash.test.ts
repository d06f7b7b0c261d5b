import { describe, expect, it } from 'vitest';
import { allFollow, requireStorable, sifted } from './clash.ts';
import { sampleWith, type Sample } from './sample.ts';

const sample = (atMs: number, headingDeg: number | null, station = 'jetty'): Sample =>
  sampleWith({
    station,
    atMs,
    withinMs: 500,
    headingDeg,
    stream: 1,
    line: 7,
  });

describe('samples of an instant that is known', () => {
  it('are left out and listed, as the same or as others', () => {
    const { fresh, rows } = sifted(
      [sample(1, 10), sample(2, 20), sample(2, 21), sample(2, 20, 'pier')],
      (station, atMs) =>
        station === 'jetty' && atMs === 1 ? { headingDeg: 10.00001, speedMPerS: null } : undefined,
    );
    expect(fresh.map(({ station, atMs, headingDeg }) => [station, atMs, headingDeg])).toEqual([
      ['jetty', 2, 20],
      ['pier', 2, 20],
    ]);
    expect(rows.map(({ reason, fromLine }) => [reason, fromLine])).toEqual([
      ['duplicate', 7],
      ['conflict', 7],
    ]);
  });

  it('cannot be among samples that follow each other', () => {
    const last = new Map([['jetty', 5]]);
    expect(allFollow([sample(6, 1), sample(1, 1, 'pier'), sample(7, 1)], last)).toBe(true);
    expect(allFollow([sample(5, 1)], last)).toBe(false);
    expect(allFollow([sample(7, 1), sample(6, 1)], last)).toBe(false);
  });
});

it('refuses a sample that no store can hold', () => {
  expect(() => requireStorable([sample(1, 10)])).not.toThrow();
  expect(() => requireStorable([sample(1, 10), sample(1.5, 10)])).toThrow('store/bad-sample');
  expect(() => requireStorable([sample(1, Number.NaN)])).toThrow('store/bad-sample');
});
