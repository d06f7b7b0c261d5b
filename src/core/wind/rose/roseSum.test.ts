import { describe, expect, it } from 'vitest';
import { windSeries } from '../../../../test/support/windSeries.ts';
import { ArcMemory, slotFor } from './arcMemory.ts';
import { roseOf } from './rose.ts';
import { RoseSum, type RoseLayout } from './roseSum.ts';
import { sectorShares } from './sectors.ts';

const layout: RoseLayout = {
  sectors: { count: 16, firstCentreDeg: 0 },
  speedBoundsMPerS: [2, 4, 6],
  calmBelowMPerS: 0.5,
  equalWeight: 'hour-of-season',
  utcOffsetMin: 60,
};
const HOUR = 3_600_000;

describe('the sum behind a rose', () => {
  it('sorts calm, wind, unread headings and unread speeds apart', () => {
    const sum = new RoseSum(layout);
    sum.add(0, 0, 0.49); // calm, whatever the vane shows
    sum.add(0, null, 0.1); // calm
    sum.add(0, 90, 0.5); // the lowest wind
    sum.add(0, 90, 2); // a bound belongs to the class that begins there
    sum.add(0, 90, 60);
    sum.add(0, null, 5);
    sum.add(0, 90, null);
    const rose = roseOf(sum);
    expect(rose.calm!.readings).toBe(2);
    expect(rose.petals[4]!.readings).toBe(3);
    expect(rose.petals[4]!.byClass).toEqual([0.2, 0.2, 0, 0.2]);
    expect([rose.withoutHeading, rose.withoutSpeed]).toEqual([1, 1]);
  });

  it('needs no speed where there are no cups, and then knows no calms', () => {
    const sum = new RoseSum({ ...layout, speedBoundsMPerS: null });
    sum.add(0, 90, null);
    sum.add(0, 90, null);
    const rose = roseOf(sum);
    expect(rose.calm).toBeNull();
    expect(rose.petals[4]!.byClass).toEqual([1]);
  });

  it('weighs a reading by the time it stands for', () => {
    const sum = new RoseSum(layout);
    sum.add(0, 90, 5, 0, 3);
    sum.add(0, 180, 5, 0, 1);
    expect(roseOf(sum).petals[4]!.share).toBe(0.75);
  });

  it('is the same of two sums joined, in any order', () => {
    const samples = windSeries({ seed: 21, count: 3000, intervalMs: HOUR, memory: 24 });
    const [a, b, whole] = [new RoseSum(layout), new RoseSum(layout), new RoseSum(layout)];
    samples.forEach(({ atMs, headingDeg, speedMPerS }, i) => {
      (i % 3 === 0 ? a : b).add(atMs, headingDeg, speedMPerS, 5.625);
      whole.add(atMs, headingDeg, speedMPerS, 5.625);
    });
    a.merge(b);
    const [joined, direct] = [roseOf(a, 3000), roseOf(whole, 3000)];
    joined.petals.forEach((petal, i) => {
      expect(petal.share).toBeCloseTo(direct.petals[i]!.share, 12);
      expect(petal.interval!.high).toBeCloseTo(direct.petals[i]!.interval!.high, 9);
    });
    expect(joined.calm!.share).toBeCloseTo(direct.calm!.share, 12);
  });

  it('joins only sums that show the same', () => {
    const other = new RoseSum({ ...layout, speedBoundsMPerS: [2, 4] });
    expect(() => new RoseSum(layout).merge(other)).toThrow('wind/different-layout');
  });

  it('refuses a sample that is none', () => {
    const sum = new RoseSum(layout);
    expect(() => sum.add(0, 360, 5)).toThrow('wind/bad-reading');
    expect(() => sum.add(0, 10, NaN)).toThrow('wind/bad-reading');
    expect(() => sum.add(NaN, 10, 5)).toThrow('wind/bad-reading');
    expect(() => sum.add(0, 10, 5, 200)).toThrow('wind/bad-reading');
    expect(() => sum.add(0, 10, 5, 0, -1)).toThrow('wind/bad-reading');
    expect(() => roseOf(sum)).toThrow('wind/no-readings');
  });

  it('refuses classes that do not rise', () => {
    for (const speedBoundsMPerS of [
      [4, 2],
      [2, 2],
      [0, 2],
      [2, NaN],
    ]) {
      expect(() => new RoseSum({ ...layout, speedBoundsMPerS })).toThrow('wind/bad-setting');
    }
  });
});

describe('the memory of arcs', () => {
  it('repeats what the overlap gives, also for headings that share a place', () => {
    const sectors = { count: 36, firstCentreDeg: 0 };
    const memory = new ArcMemory(sectors);
    for (const halfWidth of [0, 5.625, 180, 5.625]) {
      for (const heading of [0, 0.01, 11.25, 0.02, 359.99, 0]) {
        const slot = slotFor(heading);
        if (!memory.holds(slot, heading, halfWidth)) memory.learn(slot, heading, halfWidth);
        const parts = Array.from({ length: memory.counts[slot]! }, (_, i) => ({
          sector: (memory.firsts[slot]! + i) % sectors.count,
          share: memory.shares[memory.starts[slot]! + i],
        }));
        expect(parts).toEqual(sectorShares(sectors, heading, halfWidth));
      }
    }
  });
});
