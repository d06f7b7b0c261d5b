import { expect, it } from 'vitest';
import { isCyclicSingleStep } from '../../../../test/support/codeChecker.ts';
import { buildCode, codeProblems, codeProperties, familyNames, runLengthsDeg, wordAt } from '../index.ts';

const QUICK = { seed: 1, mostSteps: 20_000 };
const SINGLE_STEP = familyNames.filter(
  (name) => !['natural-binary', 'shift-register', 'counting-wheel'].includes(name),
);

it.each(familyNames)('%s makes every count it does not refuse, and names counts that it can make', (name) => {
  for (let positions = 2; positions <= 130; positions++) {
    const problems = codeProblems(name, positions);
    if (problems.length === 0) {
      const { words, tracks, channels } = buildCode(name, positions, {}, QUICK);
      expect(words).toHaveLength(positions);
      expect(words.every((word) => word.length === channels.length)).toBe(true);
      expect(tracks.every((track) => runLengthsDeg(track).every((run) => run > 0))).toBe(true);
      continue;
    }
    for (const { fix } of problems) {
      const named = /^Set need\.positions to ([\d or]+)/.exec(fix)?.[1]?.match(/\d+/g) ?? [];
      expect(named.length, fix).toBeGreaterThan(0);
      for (const count of named) expect(codeProblems(name, Number(count)), `${name} ${count}`).toEqual([]);
    }
  }
});

it.each(SINGLE_STEP)(
  '%s changes one channel a step round the whole turn, by its words and by its edges',
  (name) => {
    for (let positions = 6; positions <= 120; positions += 6) {
      if (codeProblems(name, positions).length > 0) continue;
      const table = buildCode(name, positions, {}, QUICK);
      expect(isCyclicSingleStep(table.words), `${name} ${positions}`).toBe(true);
      expect(codeProperties(table).singleStep, `${name} ${positions}`).toBe(true);
    }
  },
);

it.each(familyNames)(
  '%s shows a word over the whole of its step, but where a track has edges inside',
  (name) => {
    const table = buildCode(name, 24, {}, QUICK);
    // The clock of a shift register and the index of a wheel have edges inside a step; their other channels do not.
    const count = table.strobe ? table.channels.length - 1 : table.channels.length;
    for (const [k, word] of table.words.entries()) {
      for (const part of [0.001, 0.25, 0.5, 0.75, 0.999]) {
        expect(wordAt(table, ((k + part) * 360) / 24).slice(0, count), `${name} ${k}`).toBe(
          word.slice(0, count),
        );
      }
    }
  },
);
