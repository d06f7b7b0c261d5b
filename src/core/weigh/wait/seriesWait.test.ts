import { describe, expect, it } from 'vitest';
import { VanewrightError } from '../../error/index.ts';
import { checkedSeries, recordedWind, seriesWait, type SeriesRow } from '../index.ts';

const hourly = (...headings: number[]): SeriesRow[] =>
  headings.map((headingDeg, i) => ({ atMs: i * 3_600_000, headingDeg }));

describe('waiting for an index in a recorded wind', () => {
  it('takes every row as a power-up and ends where the vane turns past', () => {
    // North is passed between 350 and 10, at hour 3; the last two hours never meet it again.
    const { meanH, neverShare, powerUps } = seriesWait(hourly(300, 320, 350, 10, 30), 0);
    expect(powerUps).toBe(5);
    // 3, 2 and 1 hours met; 1 and 0 hours followed in vain.
    expect(meanH).toBeCloseTo((3 + 2 + 1 + 1 + 0) / 5, 12);
    expect(neverShare).toBeCloseTo(2 / 5, 12);
  });

  it('turns the short way, either way round', () => {
    expect(seriesWait(hourly(10, 350, 350), 0).neverShare).toBeCloseTo(2 / 3, 12);
    expect(seriesWait(hourly(10, 350, 350), 180).neverShare).toBe(1);
  });

  it('does not guess how the wind turned across a hole', () => {
    const rows = [...hourly(300, 310, 320), { atMs: 100 * 3_600_000, headingDeg: 40 }];
    expect(seriesWait(rows, 0)).toMatchObject({ neverShare: 1, p95H: null });
  });

  it('has no 95 % when more than one in twenty never met the index', () => {
    expect(seriesWait(hourly(350, 10, 20), 0).p95H).toBeNull();
    const swinging = Array.from({ length: 100 }, (_, i) => (i % 2 === 0 ? 350 : 10));
    expect(seriesWait(hourly(...swinging), 0).p95H).toBe(1);
  });

  it('is put in order first, and refused when too short', () => {
    const [a, b, c] = hourly(1, 2, 3);
    expect(checkedSeries([c!, a!, b!, b!], 'wind.csv')).toEqual([a, b, c]);
    expect(() => checkedSeries([a!, b!], 'wind.csv')).toThrow(VanewrightError);
    expect(() => checkedSeries([a!, b!], 'wind.csv')).toThrow('weigh/short-series');
  });
});

describe('shares of a recorded wind', () => {
  const swings = { sectorShares: null, weatherHours: 48, hourChangeDeg: 0, swingDeg: 0, calmShare: 0 };
  const view = recordedWind(hourly(350, 355, 5, 20), swings);

  it('count the rows within an arc, across north too', () => {
    expect(view.shareIn(352, 16)).toBe(0.5);
    expect(view.shareIn(-8, 16)).toBe(0.5);
    expect(view.shareIn(20, 1)).toBe(0.25);
    expect(view.shareIn(77, 360)).toBe(1);
  });

  it('and the turns to and fro that the rows tell', () => {
    // 5, 10 and 15 degrees in three hours; a change of weather every other day turns 90 degrees more.
    const rows = recordedWind(hourly(350, 355, 5, 20), { ...swings, weatherHours: 10_000 });
    expect(rows.turnsPerDay).toBeCloseTo((30 / 360) * 8, 9);
  });
});
