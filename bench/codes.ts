// How long the search for one-track codes takes, beside the same search that does not know the necklaces.
import { buildCode, codeProperties } from '../src/core/codes/index.ts';
import { seededRandom, type Random } from '../src/core/units/index.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

/** Channels and positions, from easy to the dome's. */
const QUESTIONS = [
  [5, 30],
  [7, 126],
  [9, 360],
] as const;

/** A rival that has found nothing by then is counted as having taken this long. */
const RIVAL_MOST_MS = 10_000;

/** Steps enough to find a code for every question; more are spent on longer marks. */
const FIRST_FOUND_STEPS = 20_000;

const REPEATS = 5;

function millisecondsOf(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** The middle one of several runs, after one to warm up. [ms] */
function typicalMs(work: () => void): number {
  work();
  const times = Array.from({ length: REPEATS }, () => millisecondsOf(work)).sort((a, b) => a - b);
  return times[(REPEATS - 1) / 2]!;
}

/** Every turn of a word's bits, as many as there are channels. */
function turnsOf(word: number, channels: number): number[] {
  const mask = 2 ** channels - 1;
  return Array.from({ length: channels }, (_, by) => ((word << by) | (word >> (channels - by))) & mask);
}

/** Whether the first part of a path, turned again and again, visits every word once. */
function isWholeCode(path: readonly number[], channels: number): boolean {
  return new Set(path.flatMap((word) => turnsOf(word, channels))).size === path.length * channels;
}

/**
 * One attempt of the rival: a path of words, one bit a step, depth first; only when it closes on a turned first word is it
 * asked whether the whole track shows every word once.
 */
function plainAttempt(channels: number, length: number, random: Random, until: number): boolean {
  const path = [0b1];
  const used = new Set(path);
  let tries = 0;
  const deeper = (): boolean => {
    tries += 1;
    if (tries > 200_000 || (tries % 256 === 0 && performance.now() > until)) return false;
    const last = path.at(-1)!;
    if (path.length === length) {
      const closes = turnsOf(path[0]!, channels).some((word) => turnsOf(1, channels).includes(word ^ last));
      return closes && isWholeCode(path, channels);
    }
    const bits = Array.from({ length: channels }, (_, bit) => ({ bit, key: random.uniform() }));
    for (const { bit } of bits.sort((a, b) => a.key - b.key)) {
      const next = last ^ (1 << bit);
      if (used.has(next)) continue;
      path.push(next);
      used.add(next);
      if (deeper()) return true;
      used.delete(next);
      path.pop();
    }
    return false;
  };
  return deeper();
}

/** Time the rival takes to find one code, or the most it is given. [ms] */
function plainSearchMs(channels: number, positions: number): number {
  const random = seededRandom(1);
  const until = performance.now() + RIVAL_MOST_MS;
  return millisecondsOf(() => {
    while (performance.now() < until) {
      if (plainAttempt(channels, positions / channels, random, until)) return;
    }
  });
}

/** Ratios against the plain search for one code, and what the whole search for long marks takes. */
export async function run(report: Report): Promise<void> {
  for (const [channels, positions] of QUESTIONS) {
    const asked = { channels, headPlacement: 'even' } as const;
    const ownMs = typicalMs(() => {
      buildCode('single-track-gray', positions, asked, { seed: 1, mostSteps: FIRST_FOUND_STEPS });
    });
    const rivalMs = plainSearchMs(channels, positions);
    const least = rivalMs >= RIVAL_MOST_MS ? ', at least' : '';
    report({
      name: `${positions} positions on ${channels} sensors, plain search takes${least}`,
      value: Number((rivalMs / ownMs).toPrecision(2)),
      unit: 'times as long',
    });
  }
  for (const [family, positions] of [
    ['single-track-gray', 360],
    ['long-run-gray', 360],
    ['balanced-gray', 360],
  ] as const) {
    let shortest = 0;
    const ms = typicalMs(() => {
      shortest = codeProperties(buildCode(family, positions)).shortestRunSteps;
    });
    report({ name: `${family} of ${positions}, whole search`, value: Math.round(ms), unit: 'ms' });
    report({ name: `${family} of ${positions}, shortest mark`, value: shortest, unit: 'steps' });
  }
}
