import { describe, expect, it } from 'vitest';
import type { Damage } from '../../../test/support/damage.ts';
import { DAY_MS, day, foundIn } from '../../../test/support/faultRuns.ts';

describe('a year of the jetty', () => {
  it('shows nothing where nothing is broken', () => {
    expect(foundIn(11, '01-01', 365, []).map(({ kind }) => kind)).toEqual([]);
  });

  it('names what broke, with its dates, and blames nothing else', () => {
    const damages: Damage[] = [
      { kind: 'frozen-vane', fromMs: day('01-20'), untilMs: day('01-21') },
      { kind: 'stuck-channel', channel: 3, level: '1', fromMs: day('02-10'), untilMs: day('02-17') },
      { kind: 'seized-cups', fromMs: day('03-10'), untilMs: day('03-18') },
      { kind: 'lost-power', fromMs: day('03-22'), untilMs: day('03-28') },
      { kind: 'contact-bounce', fromMs: day('04-01'), untilMs: day('04-06') },
    ];
    const findings = foundIn(7, '01-01', 110, damages);
    expect(findings.map(({ kind }) => kind)).toEqual(damages.map(({ kind }) => kind));
    for (const [i, { sinceMs, untilMs, noticedMs }] of findings.entries()) {
      expect(Math.abs(sinceMs - damages[i]!.fromMs)).toBeLessThan(0.5 * DAY_MS);
      expect(Math.abs(untilMs! - damages[i]!.untilMs)).toBeLessThan(DAY_MS);
      expect(noticedMs - damages[i]!.fromMs).toBeLessThan(3 * DAY_MS);
    }
    expect(findings[1]!.channels).toEqual([3]);
  });
});

/** Faults of light, motion and cups, each by itself after three weeks of sound readings: days until noticed. */
const delays: readonly (readonly [string, Damage, number])[] = [
  ['a light that fades by 2 % a day', alone({ kind: 'dim-light', channel: 2, perDay: 0.02 }), 14],
  ['daylight that dark reads as lit', alone({ kind: 'ambient-leak', share: 0.3 }), 4],
  ['daylight below the threshold', alone({ kind: 'ambient-leak', share: 0.02 }), 4],
  ['dew in four mornings', alone({ kind: 'condensation' }), 3],
  ['dirt in one window', alone({ kind: 'dirty-sector', channel: 3, position: 12, left: 0.5 }), 21],
  ['a window that is stopped', alone({ kind: 'dirty-sector', channel: 1, position: 12, left: 0 }), 20],
  ['steps that are skipped', alone({ kind: 'skipped-steps', chance: 0.05 }), 1],
  ['a clock set by an hour', alone({ kind: 'clock-jump' }), 1],
];

/** Damage from the end of January on. */
function alone<D extends { kind: Damage['kind'] }>(damage: D): Damage {
  return { ...damage, fromMs: day('01-25'), untilMs: day('02-20') } as unknown as Damage;
}

describe('a fault by itself', () => {
  it.each(delays)('%s is found in time and nothing else with it', (_, damage, days) => {
    const findings = foundIn(21, '01-01', 50, [damage]);
    expect([...new Set(findings.map(({ kind }) => kind))]).toEqual([damage.kind]);
    const late = findings[0]!.noticedMs - damage.fromMs;
    expect(late).toBeGreaterThan(0);
    expect(late).toBeLessThan(days * DAY_MS);
    expect(Math.abs(findings[0]!.sinceMs - damage.fromMs)).toBeLessThan(days * DAY_MS);
  });

  it('a bearing that wears is found within three weeks, before the cups are called seized', () => {
    const worn: Damage = {
      kind: 'bearing-wear',
      startMPerS: 1.5,
      fromMs: day('02-15'),
      untilMs: day('04-10'),
    };
    const [wear, ...more] = foundIn(201, '01-01', 80, [worn]);
    expect(more).toEqual([]);
    expect(wear!.kind).toBe('bearing-wear');
    expect(wear!.noticedMs - worn.fromMs).toBeGreaterThan(0);
    expect(wear!.noticedMs - worn.fromMs).toBeLessThan(21 * DAY_MS);
  });

  it('a channel that flickers while the cups turn is found within a day, four samples a second', () => {
    const noisy: Damage = {
      kind: 'chatter',
      channel: 4,
      chance: 0.5,
      fromMs: day('01-02'),
      untilMs: day('01-04'),
    };
    const [chatter, ...more] = foundIn(203, '01-01', 2, [noisy], 250);
    expect(more).toEqual([]);
    expect(chatter).toMatchObject({ kind: 'chatter', channels: [4], spoils: 'nothing' });
    expect(chatter!.noticedMs - noisy.fromMs).toBeGreaterThan(0);
    expect(chatter!.noticedMs - noisy.fromMs).toBeLessThan(DAY_MS);
  });

  it('tells in how many days a fading light is gone', () => {
    const [dim] = foundIn(21, '01-01', 45, [alone({ kind: 'dim-light', channel: 2, perDay: 0.02 })]);
    // Begun on 25 January, 2 % a day, gone at the 4 % the head calls lit: 48 days later; the record ends on day 21 of it.
    expect(dim!.channels).toEqual([2]);
    expect(dim!.daysLeft!).toBeGreaterThan(20);
    expect(dim!.daysLeft!).toBeLessThan(34);
  });
});
