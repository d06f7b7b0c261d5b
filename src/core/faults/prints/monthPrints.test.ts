import { expect, it } from 'vitest';
import { day, jetty, jettyHead } from '../../../../test/support/faultRuns.ts';
import { vaneYear } from '../../../../test/support/vaneYear.ts';
import { MonthPrints } from '../index.ts';

it('names the cause in the month that has it and none in the month before', () => {
  const [fromMs, untilMs] = [day('04-01'), day('06-03')];
  const broken = { kind: 'stuck-channel', channel: 3, level: '1', fromMs: day('05-01'), untilMs } as const;
  const prints = new MonthPrints(jettyHead.disc.code);
  const year = { instrument: jetty, head: jettyHead, seed: 4, fromMs, untilMs, stepMs: 120_000 };
  for (const { sample } of vaneYear({ ...year, damages: [broken] })) prints.add(sample);
  const found = prints.result().map(({ month, causes }) => [month, causes[0]!.title]);
  expect(found.slice(0, 2)).toEqual([
    ['2026-04', 'nothing is wrong'],
    ['2026-05', 'channel 3 always reads 1'],
  ]);
});

it('says nothing of a month of a few words', () => {
  const prints = new MonthPrints(jettyHead.disc.code);
  for (let i = 0; i < 100; i++)
    prints.add({ atMs: day('04-01') + i * 60_000, word: jettyHead.disc.code.words[i % 3]! });
  expect(prints.result()).toEqual([]);
});
