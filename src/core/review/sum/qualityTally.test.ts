import { describe, expect, it } from 'vitest';
import { READ_HEADING, READ_SPEED, sampleLimits, type SampleColumns } from '../../wind/index.ts';
import { QualityTally } from './qualityTally.ts';

const DAY_MS = 86_400_000;
const START_MS = Date.UTC(2026, 2, 1);
const BOTH = READ_HEADING | READ_SPEED;
const limits = sampleLimits({
  intervalMs: 60_000,
  calmBelowMPerS: 0.5,
  readingWidthDeg: 11.25,
  turnRateDegPerS: null,
});

type Minute = readonly [headingDeg: number, speedMPerS: number, read?: number];

/** One sample a minute, lively unless told otherwise. */
function minutes(count: number, of: (i: number) => Minute | null): SampleColumns {
  const rows = Array.from(
    { length: count },
    (_, i): Minute => of(i) ?? [220 + 11.25 * (i % 3), 5 + 0.25 * (i % 5)],
  );
  return {
    atMs: Float64Array.from(rows, (_, i) => START_MS + (i + 1) * 60_000),
    headingDeg: Float64Array.from(rows, ([heading]) => heading),
    speedMPerS: Float64Array.from(rows, ([, speed]) => speed),
    read: Uint8Array.from(rows, ([, , read]) => read ?? BOTH),
  };
}

function tallied(...parts: readonly SampleColumns[]): QualityTally {
  const tally = new QualityTally(limits);
  for (const part of parts) tally.addColumns(part);
  tally.end();
  return tally;
}

describe('the tally of quality flags', () => {
  it('has nothing to count in a lively day', () => {
    const tally = tallied(minutes(1440, () => null));
    expect(tally.days()).toEqual([]);
    expect(Object.values(tally.totals()).every((count) => count === 0)).toBe(true);
  });

  it('counts each flag on the day of its sample', () => {
    const tally = tallied(
      minutes(2880, (i) => {
        if (i === 10) return [220, 80]; // no surface wind reaches 75 m/s
        if (i === 2000) return [0, 5, READ_SPEED];
        return i === 2500 ? [220, 0] : null;
      }),
    );
    expect(tally.days().map(({ startMs }) => (startMs - START_MS) / DAY_MS)).toEqual([0, 1]);
    expect(tally.days()[0]!.counts['speed-range']).toBe(1);
    expect(tally.days()[1]!.counts).toMatchObject({ 'no-heading-in-wind': 1, 'heading-in-calm': 1 });
  });

  it('counts every minute of a vane that stands in wind, on both days of a midnight', () => {
    const stuck = minutes(2880, (i) => (i >= 1400 && i < 1500 ? [315, 5 + 0.25 * (i % 5)] : null));
    const tally = tallied(stuck);
    // Minute 1401 to minute 1500: 39 before midnight; midnight itself is the next day's first instant.
    expect(tally.days().map(({ counts }) => counts['heading-stuck'])).toEqual([39, 61]);
    expect(tally.totals()['heading-stuck']).toBe(100);
    expect(tally.spans).toHaveLength(1);
  });

  it('is the same in pieces, and changes nothing of what it is given', () => {
    const all = minutes(2880, (i) => (i % 700 < 100 ? [315, 5] : null));
    const before = structuredClone(all);
    const part = (from: number, to: number): SampleColumns => ({
      atMs: all.atMs.subarray(from, to),
      headingDeg: all.headingDeg.subarray(from, to),
      speedMPerS: all.speedMPerS.subarray(from, to),
      read: all.read.subarray(from, to),
    });
    const whole = tallied(all);
    const pieces = tallied(part(0, 731), part(731, 1444), part(1444, 2880));
    expect(whole.totals()['heading-stuck']).toBeGreaterThan(0);
    expect(pieces.totals()).toEqual(whole.totals());
    expect(pieces.spans).toEqual(whole.spans);
    expect(all).toEqual(before);
  });
});
