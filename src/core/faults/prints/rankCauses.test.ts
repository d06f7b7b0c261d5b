import { describe, expect, it } from 'vitest';
import type { Damage } from '../../../../test/support/damage.ts';
import { DAY_MS, day, jetty, jettyHead } from '../../../../test/support/faultRuns.ts';
import { vaneYear } from '../../../../test/support/vaneYear.ts';
import { rankCauses, WordSteps } from '../index.ts';

const [fromMs, untilMs] = [day('03-01'), day('03-01') + 30 * DAY_MS];

function causesOf(seed: number, damages: readonly Damage[]) {
  const steps = new WordSteps();
  const year = { instrument: jetty, head: jettyHead, seed, fromMs, untilMs, stepMs: 60_000, damages };
  for (const { sample } of vaneYear(year)) steps.add(sample);
  return rankCauses(steps, jettyHead.disc.code);
}

describe('the likeliest cause of a month of words', () => {
  it.each([1, 2])('is none for a sound disc, draw %d', (seed) => {
    expect(causesOf(seed, [])[0]!.title).toBe('nothing is wrong');
  });

  it.each([
    ['channel 3 always reads 1', { kind: 'stuck-channel', channel: 3, level: '1', fromMs, untilMs }],
    ['channel 1 always reads 0', { kind: 'stuck-channel', channel: 1, level: '0', fromMs, untilMs }],
    [
      'channel 1 reads wrong at position 12',
      { kind: 'dirty-sector', channel: 1, position: 12, left: 0, fromMs, untilMs },
    ],
  ] as const)('is that %s, where it does', (title, damage) => {
    const [first, second] = causesOf(4, [damage]);
    expect(first!.title).toBe(title);
    expect(first!.logOdds).toBe(0);
    expect(second!.logOdds).toBeLessThan(0);
    expect(first!.probability).toBeGreaterThan(0.9);
  });

  it('is not told without words', () => {
    const steps = new WordSteps();
    for (let i = 0; i < 10; i++) steps.add({ atMs: i * 1000, word: null });
    expect(rankCauses(steps, jettyHead.disc.code)).toEqual([]);
  });
});
