import { describe, expect, it } from 'vitest';
import { memorySampleStore } from '../adapters/memory/index.ts';
import { batchOf } from '../../test/contracts/sampleStore.ts';
import type { Damage } from '../../test/support/damage.ts';
import { DAY_MS, day, jetty, jettyHead } from '../../test/support/faultRuns.ts';
import { someAlert } from '../../test/support/someAlert.ts';
import { vaneYear } from '../../test/support/vaneYear.ts';
import { faultSetting } from '../core/faults/index.ts';
import type { Sample } from '../core/record/index.ts';
import type { Alert, AlertChannel } from '../ports/index.ts';
import { AlertOutbox } from './alertOutbox.ts';
import { FaultAlerts } from './faultAlerts.ts';

const fromMs = day('01-01');
function samplesOf(days: number, damages: readonly Damage[]): Sample[] {
  const untilMs = fromMs + days * DAY_MS;
  const year = { instrument: jetty, head: jettyHead, seed: 3, fromMs, untilMs, stepMs: 60_000, damages };
  return [...vaneYear(year)].map(({ sample }) => sample);
}
const frozen = (from: string, hours: number): Damage => ({
  kind: 'frozen-vane',
  fromMs: day(from),
  untilMs: day(from) + hours * 3_600_000,
});

describe('faults told as they come', () => {
  it('are told once each way, also when the vane comes loose for an hour and freezes again', () => {
    let nowMs = fromMs;
    const alerts = new FaultAlerts(faultSetting(jetty, jettyHead), () => nowMs);
    const heard: Alert[] = [];
    alerts.listen((alert) => heard.push(alert));
    const again = {
      ...frozen('01-10', 9),
      fromMs: day('01-10') + 10 * 3_600_000,
      untilMs: day('01-10') + 20 * 3_600_000,
    };
    for (const sample of samplesOf(13, [frozen('01-10', 9), again as Damage])) {
      nowMs = sample.atMs;
      alerts.take([sample]);
    }
    expect(heard.map(({ state, finding }) => [state, finding.kind])).toEqual([
      ['raised', 'frozen-vane'],
      ['cleared', 'frozen-vane'],
    ]);
    expect(heard[0]!.atMs - day('01-10')).toBeLessThan(9 * 3_600_000);
    expect(alerts.current()).toEqual([]);
  });

  it('are no news when an old log is read, and are known from the store at the next start', async () => {
    const samples = samplesOf(12, [frozen('01-10', 100)]);
    const alerts = new FaultAlerts(faultSetting(jetty, jettyHead), () => fromMs + 400 * DAY_MS);
    const heard: Alert[] = [];
    alerts.listen((alert) => heard.push(alert));
    alerts.take(samples);
    expect(heard).toEqual([]);
    const store = memorySampleStore();
    await store.commit(batchOf(1, samples.slice(0, -1)));
    const next = new FaultAlerts(faultSetting(jetty, jettyHead), () => samples.at(-1)!.atMs);
    next.listen((alert) => heard.push(alert));
    await next.learn(store);
    next.take([samples.at(-1)!]);
    expect(heard.map(({ state, fault }) => [state, fault.split('/')[0]])).toEqual([
      ['raised', 'frozen-vane'],
    ]);
    expect(next.current()).toHaveLength(1);
  });
});

it('a clamp that slips is told beside the other of two stations that are logged', () => {
  let nowMs = fromMs;
  const alerts = new FaultAlerts(faultSetting(jetty, jettyHead), () => nowMs);
  const heard: Alert[] = [];
  alerts.listen((alert) => heard.push(alert));
  const slip: Damage = { kind: 'slipped-clamp', byDeg: 40, fromMs: day('01-18'), untilMs: day('02-01') };
  const pier = samplesOf(22, []).map((sample) => ({ ...sample, station: 'pier' }));
  for (const [i, sample] of samplesOf(22, [slip]).entries()) {
    nowMs = sample.atMs;
    alerts.take([sample, pier[i]!]);
  }
  const own = heard.filter(({ station }) => station === 'jetty');
  expect(own.map(({ finding }) => finding.kind)).toEqual(['slipped-clamp']);
  expect(own[0]!.finding.title).toMatch(/against pier$/);
  expect(own[0]!.atMs - slip.fromMs).toBeLessThan(3 * DAY_MS);
});

describe('an outbox', () => {
  it('sends in order, and again what was not taken', async () => {
    const sent: string[] = [];
    const troubles: string[] = [];
    const later: (() => void)[] = [];
    let isDown = true;
    const channel: AlertChannel = {
      name: 'bell',
      async send({ state }) {
        if (isDown) throw new Error('nobody there');
        sent.push(state);
      },
      async close() {},
    };
    const clock = { nowMs: () => 0, after: (_: number, work: () => void) => (later.push(work), () => {}) };
    const outbox = new AlertOutbox(channel, clock, (text) => troubles.push(text));
    outbox.put(someAlert());
    outbox.put(someAlert('cleared'));
    await new Promise((done) => setTimeout(done, 5));
    expect(troubles).toEqual(['bell: nobody there; 2 alerts wait and are sent again.']);
    isDown = false;
    later[0]!();
    await outbox.close();
    expect(sent).toEqual(['raised', 'cleared']);
  });
});
