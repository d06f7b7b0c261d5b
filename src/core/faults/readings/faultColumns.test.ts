import { expect, it } from 'vitest';
import { sampleFlags, sampleWith, type Sample } from '../../record/index.ts';
import type { Damage } from '../../../../test/support/damage.ts';
import { DAY_MS, day, jetty, jettyHead } from '../../../../test/support/faultRuns.ts';
import { vaneYear } from '../../../../test/support/vaneYear.ts';
import { FaultWatch, findFaults } from '../faultWatch.ts';
import { faultSetting } from '../setting.ts';
import { eachSample, faultColumnsOf } from './faultColumns.ts';

const setting = faultSetting(jetty, jettyHead);

/** Fifty days of the jetty with damage of the words, of the cups, of the light and of the supply. */
function record(): Sample[] {
  const fromMs = day('01-01');
  const damages: Damage[] = [
    { kind: 'stuck-channel', channel: 3, level: '1', fromMs: day('01-10'), untilMs: day('01-17') },
    { kind: 'ambient-leak', share: 0.3, fromMs: day('01-20'), untilMs: day('01-28') },
    { kind: 'seized-cups', fromMs: day('02-01'), untilMs: day('02-08') },
    { kind: 'lost-power', fromMs: day('02-10'), untilMs: day('02-16') },
  ];
  const untilMs = fromMs + 50 * DAY_MS;
  const year = { instrument: jetty, head: jettyHead, seed: 5, fromMs, untilMs, stepMs: 60_000, damages };
  return Array.from(vaneYear(year), ({ sample }) => sample);
}

it('finds in columns, handed over in pieces, what is found sample by sample', () => {
  const samples = record();
  const expected = findFaults(samples, setting);
  expect(expected.length).toBeGreaterThan(3);
  const watch = new FaultWatch(setting);
  for (let from = 0; from < samples.length; from += 9973) {
    watch.addColumns(faultColumnsOf(samples.slice(from, from + 9973)));
  }
  expect(watch.findings()).toEqual(expected);
});

it('hands on every part of a sample, and nothing for nothing', () => {
  const full = sampleWith({
    station: 'jetty',
    atMs: 1000,
    withinMs: 500,
    headingDeg: 11.25,
    speedMPerS: 3,
    flags: sampleFlags.impossibleJump,
    word: '00110',
    counts: [1, 2, 3, 4, 5],
    pulses: 7,
    edges: 14,
    stream: 2,
    line: 9,
  });
  const bare = sampleWith({ station: 'jetty', atMs: 2000, withinMs: 500, stream: 2, line: 10 });
  const seen: object[] = [];
  eachSample(faultColumnsOf([full, bare]), (sample) => seen.push({ ...sample }));
  expect(seen).toHaveLength(2);
  expect(full).toMatchObject(seen[0]!);
  expect(bare).toMatchObject(seen[1]!);
  expect(seen[1]).toMatchObject({
    headingDeg: null,
    speedMPerS: null,
    word: null,
    pulses: null,
    counts: null,
  });
});
