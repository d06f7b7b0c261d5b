import { describe, expect, it } from 'vitest';
import { modelWait } from '../../../src/core/weigh/index.ts';

const RUN = { powerUps: 4000, seed: 20260101, horizonH: 1e5 };
const STILL = { sectorShares: null, swingDeg: 0, calmShare: 0 };

/** Four standard errors of a mean whose waits scatter about as much as they last. */
const four = (mean: number): number => (4 * mean) / Math.sqrt(RUN.powerUps);

/** Share still waiting after so long on a random walk. */
function walkStillWaits(hours: number, sigmaDeg: number): number {
  let share = 0;
  for (let k = 1; k < 200; k += 2) {
    share += (8 / (Math.PI * k) ** 2) * Math.exp((-((k * Math.PI * sigmaDeg) ** 2) * hours) / (2 * 360 ** 2));
  }
  return share;
}

describe('the wait for an index on a random walk', () => {
  const walk = modelWait({ ...STILL, hourChangeDeg: 30, weatherHours: 1e9 }, 70, RUN);

  it('is 360² / 6σ² hours on average: a day for 30 degrees an hour', () => {
    expect(Math.abs(walk.meanH - 360 ** 2 / (6 * 30 ** 2))).toBeLessThan(four(24));
  });

  it('leaves as many waiting after its 95 % as the closed form', () => {
    // One in twenty, within four standard errors of 4000 draws.
    expect(Math.abs(walkStillWaits(walk.p95H!, 30) - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 4000));
  });

  it('is four times as long when the wind wanders half as far', () => {
    const slow = modelWait({ ...STILL, hourChangeDeg: 15, weatherHours: 1e9 }, 70, RUN);
    expect(Math.abs(slow.meanH - 4 * 24)).toBeLessThan(four(4 * 24));
  });

  it('is longer by the calms, in which nothing moves', () => {
    const calm = modelWait({ ...STILL, calmShare: 0.5, hourChangeDeg: 30, weatherHours: 1e9 }, 70, RUN);
    expect(Math.abs(calm.meanH - 2 * 24)).toBeLessThan(four(2 * 24));
  });
});

describe('the wait for an index with independent draws', () => {
  it('is 4.365 changes of weather where all directions are alike', () => {
    const [sine, cosine] = [Math.sin(0.5), Math.cos(0.5)];
    const a = 1 / (1 - sine - (cosine * (1 - cosine)) / (1 - sine));
    const draws = 2 * (a - 1);
    expect(draws).toBeCloseTo(4.365, 3);
    const { meanH } = modelWait({ ...STILL, hourChangeDeg: 0, weatherHours: 10 }, 200, RUN);
    expect(Math.abs(meanH - 10 * draws)).toBeLessThan(four(10 * draws));
  });

  it('is exponential where the wind knows two sectors and the index stands in one of them', () => {
    // A fifth of the wind from the north sector, which the index halves, the rest from the east.
    const sectorShares = [1, 0, 4, 0, 0, 0, 0, 0];
    const { meanH, p95H } = modelWait({ ...STILL, sectorShares, hourChangeDeg: 0, weatherHours: 10 }, 0, RUN);
    const west = 0.1; // Share of the draws that land left of the index.
    const [fromEast, fromWest] = [10 / west, 10 / (1 - west)];
    const mean = (1 - west) * fromEast + west * fromWest;
    expect(Math.abs(meanH - mean)).toBeLessThan(four(mean));
    const stillWait = (1 - west) * Math.exp(-p95H! / fromEast) + west * Math.exp(-p95H! / fromWest);
    expect(Math.abs(stillWait - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 4000));
  });
});

describe('a vane that swings about a steady direction', () => {
  it('meets the index when one of its swings reaches it', () => {
    // Directions all alike, swings of 20 degrees every ten seconds: from x away, one swing passes with the chance
    // Q(x/20) + Q((360 − x)/20); within half an hour 180 of them. Beyond 90 degrees none ever does, nor in a year.
    const wind = { ...STILL, swingDeg: 20, hourChangeDeg: 0, weatherHours: 1e9 };
    const { neverShare, p95H } = modelWait(wind, 0, { powerUps: 1000, seed: 3, horizonH: 0.5 });
    // 180 swings reach z with Q(z) = 0.0038, 2.67 standard deviations or 53 degrees, in half of all cases:
    // 2 × 53 of 360 degrees lie nearer than that.
    expect(Math.abs(neverShare - (1 - 106.8 / 360))).toBeLessThan(4 * Math.sqrt((0.3 * 0.7) / 1000));
    expect(p95H).toBeNull();
  });
});
