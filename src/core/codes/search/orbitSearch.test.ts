import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { invertingRotation, rotation, turnOrbits } from './cubeTurn.ts';
import { StepCounter } from './limits.ts';
import { longestRuns, shortestRun } from './longestRuns.ts';
import { searchOrbits, type OrbitProblem } from './orbitSearch.ts';

function search(problem: OrbitProblem, mostSteps = 200_000, seed = 1) {
  return searchOrbits(problem, seededRandom(seed), new StepCounter({ seed, mostSteps }));
}

/** All lengths of cycles that one track can show with n heads at equal steps, by trying every track of P cells. */
function trackExists(channels: number, positions: number, spacing: number): boolean {
  for (let track = 0; track < 2 ** positions; track++) {
    const cell = (k: number): number => (track >> (k % positions)) & 1;
    const words = Array.from({ length: positions }, (_, k) =>
      Array.from({ length: channels }, (_, c) => cell(k + c * spacing)).join(''),
    );
    const isSingleStep = words.every((word, k) => {
      const next = words[(k + 1) % positions]!;
      return [...word].filter((level, c) => level !== next[c]).length === 1;
    });
    if (isSingleStep && new Set(words).size === positions) return true;
  }
  return false;
}

describe('the rings of words', () => {
  it('are as many as the necklaces that do not repeat themselves', () => {
    // Binary necklaces of full period (OEIS A001037): 2, 1, 2, 3, 6, 9, 18, 30, 56, 99.
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => turnOrbits(rotation(n)).count)).toEqual([
      2, 1, 2, 3, 6, 9, 18, 30, 56, 99,
    ]);
  });

  it('are as many as the self-opposite necklaces that do not repeat themselves', () => {
    // OEIS A000048: 1, 1, 1, 2, 3, 5, 9, 16, 28, 51.
    expect([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => turnOrbits(invertingRotation(n)).count)).toEqual([
      1, 1, 1, 2, 3, 5, 9, 16, 28, 51,
    ]);
  });
});

describe('the search', () => {
  it('agrees with every track tried one by one, for all short tracks', () => {
    for (const channels of [2, 3, 4]) {
      for (let length = 1; length * channels <= 14; length++) {
        const plain = turnOrbits(rotation(channels));
        const end = length > plain.count ? 'impossible' : search({ orbits: plain, length, leastRun: 1 }).end;
        // A head spacing of P/n cells; two words on one ring are a code of one track all the same.
        expect(end === 'found', `${channels} heads, ${length * channels} cells`).toBe(
          trackExists(channels, channels * length, length),
        );
      }
    }
  });

  it('says that a code is impossible only after trying everything, and that steps ran out otherwise', () => {
    const orbits = turnOrbits(rotation(7));
    expect(search({ orbits, length: 18, leastRun: 6 }, 2_000_000).end).toBe('impossible');
    expect(search({ orbits, length: 18, leastRun: 6 }, 2_000).end).toBe('out-of-steps');
    expect(search({ orbits, length: 18, leastRun: 5 }, 200_000).end).toBe('found');
  });

  it('keeps every run as long as asked, across the seam too', () => {
    const orbits = turnOrbits(invertingRotation(8));
    for (const leastRun of [2, 3, 4, 5]) {
      const end = search({ orbits, length: 15, leastRun });
      expect(end.end === 'found' && shortestRun(end.words)).toBeGreaterThanOrEqual(leastRun);
    }
  });

  it('gives the same code for the same seed', () => {
    const orbits = turnOrbits(rotation(9));
    const problem = { orbits, length: 40, leastRun: 5 };
    expect(search(problem, 100_000, 5)).toEqual(search(problem, 100_000, 5));
    expect(search(problem, 100_000, 5)).not.toEqual(search(problem, 100_000, 6));
  });

  it('knows when no code can have longer runs', () => {
    const steps = new StepCounter({ seed: 1, mostSteps: 500_000 });
    const best = longestRuns({ orbits: turnOrbits(rotation(5)), length: 6 }, seededRandom(1), steps);
    expect(best).toMatchObject({ leastRun: 3, isProved: true });
  });
});

describe('a search that is watched', () => {
  const endless = { orbits: turnOrbits(rotation(9)), length: 40, leastRun: 8 };

  it('tells how far it is and never goes past its steps', () => {
    const told: number[] = [];
    const steps = new StepCounter({ seed: 1, mostSteps: 50_000, progress: (done) => told.push(done) });
    searchOrbits(endless, seededRandom(1), steps);
    expect(told.length).toBeGreaterThan(5);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(steps.done).toBeLessThanOrEqual(50_000);
  });

  it('stops when told to, with the reason', () => {
    const signal = { aborted: false };
    const progress = (done: number): void => {
      if (done > 10_000) signal.aborted = true;
    };
    const steps = new StepCounter({ seed: 1, mostSteps: 5_000_000, signal, progress });
    expect(() => searchOrbits(endless, seededRandom(1), steps)).toThrow('codes/search-cancelled');
    expect(steps.done).toBeLessThan(20_000);
  });
});
