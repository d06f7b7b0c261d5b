import { describe, expect, it } from 'vitest';
import { DAY_MS, day, foundIn, jetty, jettyHead } from '../../../../test/support/faultRuns.ts';
import { vaneYear } from '../../../../test/support/vaneYear.ts';
import { seededRandom, wrapDegrees } from '../../units/index.ts';
import { FaultWatch, faultSetting } from '../index.ts';
import { DriftSum } from './driftSum.ts';

describe('a cumulative sum', () => {
  it('tells a drift when what is beyond the allowed adds up, and where it began', () => {
    const sum = new DriftSum({ allowed: 0.5, told: 4 });
    // Hand-worked: +0.5 a step from step 3 on, so 8 steps of 1 come to 4.
    const told = [0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1].map((off, at) => sum.add(at, off));
    expect(told.slice(0, 10).every((drift) => drift === null)).toBe(true);
    expect(told[10]).toEqual({ sinceMs: 3, mean: 1, count: 8 });
  });

  it('is not told by one wild value, and forgets what came before a return', () => {
    const sum = new DriftSum({ allowed: 0.5, told: 4 });
    expect(sum.add(0, -1000)).toBeNull();
    for (let at = 1; at < 10; at++) expect(sum.add(at, 0)).toBeNull();
    expect(sum.add(10, -2)).toBeNull();
  });
});

describe('a clamp that slips', () => {
  it('is told by its own past within nine weeks when it slips by a quarter turn', () => {
    const damage = {
      kind: 'slipped-clamp',
      byDeg: 120,
      fromMs: day('05-01'),
      untilMs: day('12-01'),
    } as const;
    const findings = foundIn(31, '01-01', 200, [damage]).filter(({ kind }) => kind === 'slipped-clamp');
    expect(findings).toHaveLength(1);
    expect(Math.abs(findings[0]!.sinceMs - damage.fromMs)).toBeLessThan(21 * DAY_MS);
    expect(findings[0]!.noticedMs - damage.fromMs).toBeLessThan(63 * DAY_MS);
  });

  it('is told within three days beside a station nearby, also by 30°, and is over when it is set back', () => {
    const [fromMs, untilMs] = [day('01-01'), day('02-28')];
    const damage = { kind: 'slipped-clamp', byDeg: 30, fromMs: day('02-01'), untilMs: day('02-15') } as const;
    const watch = new FaultWatch(faultSetting(jetty, jettyHead));
    const random = seededRandom(5);
    const year = {
      instrument: jetty,
      head: jettyHead,
      seed: 33,
      fromMs,
      untilMs,
      stepMs: 60_000,
      damages: [damage],
    };
    for (const { sample, truth } of vaneYear(year)) {
      watch.add(sample);
      const isTenth = truth.atMs % 600_000 === 0;
      if (isTenth)
        watch.addNeighbour('pier', truth.atMs, wrapDegrees(truth.headingDeg + 12 + 15 * random.normal()));
    }
    const [slip, ...more] = watch.findings();
    expect(more).toEqual([]);
    expect(slip!.title).toMatch(
      /^The clamp has slipped: directions turned by (2[6-9]|3[0-4])° against pier$/,
    );
    expect(slip!.noticedMs - damage.fromMs).toBeLessThan(3 * DAY_MS);
    expect(Math.abs(slip!.sinceMs - damage.fromMs)).toBeLessThan(DAY_MS);
    expect(Math.abs(slip!.untilMs! - damage.untilMs)).toBeLessThan(DAY_MS);
  });
});
