import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { wrapDegrees } from '../../units/index.ts';
import type { WindSample } from '../period/windSample.ts';
import { flagsOf } from './qualityFlag.ts';
import { sampleLimits } from './sampleLimits.ts';
import { SampleScreen, screenSamples } from './sampleScreen.ts';

const MINUTE = 60_000;
const limits = sampleLimits({
  intervalMs: 1000,
  calmBelowMPerS: 0.5,
  readingWidthDeg: 11.25,
  turnRateDegPerS: 375,
});

/** Lively wind of a coarse disc: positions of 11.25°, speeds to 0.01 m/s, never below 2 m/s. */
function lively(minutes: number): WindSample[] {
  return windSeries({ seed: 41, count: minutes * 60, intervalMs: 1000, memory: 20 }).map((sample) => ({
    atMs: sample.atMs,
    headingDeg: wrapDegrees(Math.round((200 + (sample.headingDeg - 230) / 5) / 11.25) * 11.25),
    speedMPerS: 2 + Math.round((sample.speedMPerS / 2) * 100) / 100,
  }));
}

const changed = (from: number, to: number, change: Partial<WindSample>): WindSample[] =>
  lively(120).map((sample, i) => (i >= from && i < to ? { ...sample, ...change } : sample));

const flagged = (samples: readonly WindSample[]): [string, number, number][] => {
  const { bits } = screenSamples(samples, limits);
  const names = [...new Set([...bits].flatMap(flagsOf))];
  return names.map((name) => {
    const places = [...bits.keys()].filter((i) => flagsOf(bits[i]!).includes(name));
    return [name, places[0]!, places.length];
  });
};

describe('screening of samples', () => {
  it('finds nothing in two hours of lively wind', () => {
    expect(flagged(lively(120))).toEqual([]);
  });

  it.each([
    [{ speedMPerS: 76 }, 'speed-range'],
    [{ speedMPerS: -0.1 }, 'speed-range'],
    [{ speedMPerS: NaN }, 'speed-range'],
    [{ headingDeg: 360 }, 'heading-range'],
    [{ headingDeg: 999 }, 'heading-range'],
    [{ headingDeg: NaN }, 'heading-range'],
  ])('flags %j by range and leaves its neighbours alone', (change, flag) => {
    expect(flagged(changed(100, 101, change))).toEqual([[flag, 100, 1]]);
  });

  it('flags a leap of speed there and back', () => {
    expect(flagged(changed(100, 101, { speedMPerS: 40 }))).toEqual([['speed-rate', 100, 2]]);
  });

  it('does not compare speeds across a gap', () => {
    const samples = changed(100, 101, { speedMPerS: 40 }).filter((_, i) => i < 90 || i === 100 || i > 110);
    expect(flagged(samples)).toEqual([]);
  });

  it('flags a turn that the head cannot follow', () => {
    const screen = new SampleScreen({ ...limits, turnRateDegPerS: 90 });
    expect(screen.add(0, 350, 5)).toBe(0);
    expect(screen.add(1000, 80, 5)).toBe(0);
    expect(flagsOf(screen.add(2000, 260, 5))).toEqual(['heading-rate']);
    expect(screen.add(4000, 80, 5)).toBe(0);
  });

  it('flags a vane that stands still for half an hour of wind, from its first still sample on', () => {
    const samples = changed(600, 600 + 1900, { headingDeg: 33.75 });
    const { spans } = screenSamples(samples, limits);
    expect(spans.map(({ flag, fromMs, toMs }) => [flag, fromMs, toMs])).toEqual([
      ['heading-stuck', samples[600]!.atMs, samples[2499]!.atMs],
    ]);
    expect(flagged(samples)).toEqual([['heading-stuck', 600, 1900]]);
  });

  it('does not call a vane stuck after 29 minutes, nor in light air, nor on a coarse disc', () => {
    expect(flagged(changed(0, 29 * 60, { headingDeg: 90 }))).toEqual([]);
    expect(flagged(changed(0, 7000, { headingDeg: 90, speedMPerS: 1 })).map(([name]) => name)).toEqual([
      'speed-stuck',
    ]);
    const coarse = sampleLimits({
      intervalMs: 1000,
      calmBelowMPerS: 0.5,
      readingWidthDeg: 22.5,
      turnRateDegPerS: null,
    });
    expect(screenSamples(changed(0, 7000, { headingDeg: 90 }), coarse).spans).toEqual([]);
  });

  it('adds up no standstill over a gap in which nobody looked', () => {
    const samples = changed(0, 7200, { headingDeg: 90 }).filter((_, i) => i < 800 || i > 6500);
    expect(screenSamples(samples, limits).spans).toEqual([]);
  });

  it('flags cups that show one speed for an hour, and not cups that stand', () => {
    expect(flagged(changed(0, 3700, { speedMPerS: 3.2 }))).toEqual([['speed-stuck', 0, 3700]]);
    const standing = changed(0, 3700, { speedMPerS: 0, headingDeg: null });
    expect(flagged(standing)).toEqual([]);
  });

  it('flags the minute after which the mean speed steps', () => {
    const samples = changed(600, 7200, {}).map((s, i) =>
      i >= 600 ? { ...s, speedMPerS: s.speedMPerS! + 15 } : s,
    );
    const { spans } = screenSamples(samples, limits);
    expect(spans.map(({ flag, fromMs, toMs }) => [flag, fromMs / MINUTE, toMs / MINUTE])).toEqual([
      ['speed-step', 10 + 1 / 60, 11],
    ]);
  });

  it('says where calm and direction do not go together', () => {
    expect(flagged(changed(10, 12, { speedMPerS: 0.4 }))).toEqual([['heading-in-calm', 10, 2]]);
    expect(flagged(changed(10, 12, { headingDeg: null }))).toEqual([['no-heading-in-wind', 10, 2]]);
    expect(flagged(changed(10, 12, { headingDeg: null, speedMPerS: 0.2 }))).toEqual([]);
    expect(flagged(changed(10, 12, { speedMPerS: null }))).toEqual([]);
  });

  it('tells a stuck vane while it is stuck, and ends the span with the record', () => {
    const screen = new SampleScreen(limits);
    const bits = lively(35).map(({ atMs, speedMPerS }) => screen.add(atMs, 90, speedMPerS));
    expect(bits[1799]).toBe(0);
    expect(flagsOf(bits.at(-1)!)).toEqual(['heading-stuck']);
    expect(screen.takeSpans()).toEqual([]);
    expect(screen.end().map(({ flag }) => flag)).toEqual(['heading-stuck']);
    expect(screen.end()).toEqual([]);
  });

  it('takes samples in order of time', () => {
    const screen = new SampleScreen(limits);
    screen.add(1000, 10, 5);
    expect(() => screen.add(1000, 10, 5)).toThrow('wind/time-not-rising');
    expect(() => screen.add(NaN, 10, 5)).toThrow('wind/bad-reading');
  });
});

describe('limits', () => {
  it('are numbers, or nothing would ever be flagged', () => {
    expect(() => new SampleScreen({ ...limits, speedMostMPerS: NaN })).toThrow('wind/bad-reading');
  });

  it('need an instrument that can be', () => {
    const instrument = {
      intervalMs: 1000,
      calmBelowMPerS: 0.5,
      readingWidthDeg: 11.25,
      turnRateDegPerS: null,
    };
    expect(sampleLimits(instrument)).toMatchObject({ speedMostMPerS: 75, headingStuckMs: 30 * MINUTE });
    expect(() => sampleLimits({ ...instrument, intervalMs: 0 })).toThrow('wind/bad-reading');
    expect(() => sampleLimits({ ...instrument, turnRateDegPerS: NaN })).toThrow('wind/bad-reading');
  });
});
