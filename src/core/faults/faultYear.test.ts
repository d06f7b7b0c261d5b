import { describe, expect, it } from 'vitest';
import type { Damage } from '../../../test/support/damage.ts';
import { exampleInstrument, plannedHead } from '../../../test/support/plannedHead.ts';
import { vaneYear } from '../../../test/support/vaneYear.ts';
import { faultSetting, findFaults, type FaultSample, type Finding } from './index.ts';

const DAY_MS = 86_400_000;
const day = (text: string): number => Date.parse(`2026-${text}T00:00:00Z`);
const instrument = exampleInstrument('jetty');
const head = plannedHead(instrument);
const setting = faultSetting(
  { ...instrument, site: { ...instrument.site, latitudeDeg: 54, longitudeDeg: 10 } },
  head,
);

/** What is found in part of a year of the jetty's vane with damage. */
function found(seed: number, from: string, days: number, damages: readonly Damage[]): readonly Finding[] {
  const fromMs = day(from);
  const untilMs = fromMs + days * DAY_MS;
  function* samples(): Generator<FaultSample> {
    for (const { sample } of vaneYear({ instrument, head, seed, fromMs, untilMs, stepMs: 60_000, damages }))
      yield sample;
  }
  return findFaults(samples(), setting);
}

describe('a year of the jetty', () => {
  it('shows nothing where nothing is broken', () => {
    expect(found(11, '01-01', 365, [])).toEqual([]);
  });

  it('names what broke, with its dates, and blames nothing else', () => {
    const damages: Damage[] = [
      { kind: 'frozen-vane', fromMs: day('01-20'), untilMs: day('01-21') },
      { kind: 'stuck-channel', channel: 3, level: '1', fromMs: day('02-10'), untilMs: day('02-17') },
      { kind: 'seized-cups', fromMs: day('03-10'), untilMs: day('03-18') },
      { kind: 'lost-power', fromMs: day('03-22'), untilMs: day('03-28') },
      { kind: 'contact-bounce', fromMs: day('04-01'), untilMs: day('04-06') },
    ];
    const findings = found(7, '01-01', 110, damages);
    expect(findings.map(({ kind }) => kind)).toEqual(damages.map(({ kind }) => kind));
    for (const [i, { sinceMs, untilMs, noticedMs }] of findings.entries()) {
      expect(Math.abs(sinceMs - damages[i]!.fromMs)).toBeLessThan(0.5 * DAY_MS);
      expect(Math.abs(untilMs! - damages[i]!.untilMs)).toBeLessThan(DAY_MS);
      expect(noticedMs - damages[i]!.fromMs).toBeLessThan(3 * DAY_MS);
    }
    expect(findings[1]!.channels).toEqual([3]);
  });
});
