import { BrokenPromise } from '../../error/index.ts';
import type { CodeFamily, Refusal } from '../family.ts';
import type { Level } from '../model.ts';
import { channelsRefusal, nearestOf } from './refusals.ts';
import { colourTracksFor, planFromDigits, walkLastDigit, type Digits } from './ternaryWords.ts';

/** The reflected code of all words, which does not close: each digit runs up and down by turns. */
function fullCode(channels: number): Digits[] {
  return Array.from({ length: 3 ** channels }, (_, count) =>
    Array.from({ length: channels }, (_, c) => {
      const above = Math.floor(count / 3 ** (channels - 1 - c));
      const digit = above % 3;
      return (Math.floor(above / 3) % 2 === 0 ? digit : 2 - digit) as Level;
    }),
  );
}

/** Up and down through all levels, or through fewer at the first two words, which shortens the circle by `spare`. */
function walk(place: number, spare: number): Level[] {
  const up = ([[0, 1, 2], [0, 1], [0]] as const)[place < 2 ? spare / 2 : 0]!;
  return place % 2 === 0 ? [...up] : [...up].reverse();
}

/** Puts the two words of the one shorter word that is not used beside two that are, to reach all words but one. */
function withLastTwo(words: readonly Digits[], shorter: readonly Digits[]): Digits[] {
  const used = new Set(shorter.map((word) => word.join('')));
  const missing = fullCode(shorter[0]!.length).find((word) => !used.has(word.join('')))!;
  const isBeside = (word: Digits): boolean =>
    missing.reduce<number>((sum, level, c) => sum + Math.abs(level - word[c]!), 0) === 1;
  const at = words.findIndex((word, k) => {
    const next = words[k + 1];
    return next !== undefined && word.at(-1)! + next.at(-1)! === 1 && isBeside(word.slice(0, -1));
  });
  if (at === -1)
    throw new BrokenPromise('No place was found for the last two words of a reflected three-level code.');
  const beside = [words[at]!, words[at + 1]!].map((word): Digits => [...missing, word.at(-1)!]);
  return [...words.slice(0, at + 1), ...beside, ...words.slice(at + 1)];
}

/** A circle of any even length in which one digit moves one level a step. */
function closedCode(positions: number): Digits[] {
  if (positions === 2) return [[0], [1]];
  const most = 3 ** (colourTracksFor(positions) - 1) - 1;
  // The shorter code has an even count too, so that the last digit ends where it began.
  const wanted = 2 * Math.ceil(positions / 6);
  const shorter = closedCode(Math.min(wanted, most));
  const spare = Math.max(0, 3 * shorter.length - positions);
  const words = walkLastDigit(
    shorter,
    shorter.map((_, k) => walk(k, spare)),
  );
  return wanted > most ? withLastTwo(words, shorter) : words;
}

/** An odd count with an open seam: all words of the reflected code, or an even circle without its last word. */
function openCode(positions: number): Digits[] {
  const channels = colourTracksFor(positions);
  return positions === 3 ** channels ? fullCode(channels) : closedCode(positions + 1).slice(0, -1);
}

/** Why an odd count cannot close. */
function oddRefusal(positions: number): Refusal | null {
  if (positions % 2 === 0) return null;
  const nearest = nearestOf([positions - 1, positions + 1]);
  return {
    code: 'codes/odd-grey-levels',
    what:
      'When a channel moves one level at a time, the levels of all channels add up to an even and an odd number by turns, ' +
      'so a circle of such steps has an even number of positions.',
    allowed: `an even number of positions, such as ${nearest}`,
    fix: `Set need.positions to ${nearest}, or disc.code to ternary-modular if no colour lies in a blend of the others.`,
  };
}

/**
 * Three levels on every track, one channel moving one level a step: safe for greys, where 0 turns into 2 through 1.
 *
 * @source M. C. Er, IEEE Trans. Comput. C-33 (1984) 739: the reflected code of an odd base does not close. Circles of
 *   every even count are derived: the last digit runs up and down at the words of a shorter circle.
 * @check test/published/ternary
 */
export const ternaryReflected: CodeFamily = {
  name: 'ternary-reflected',
  title: 'three grey levels',
  options: ['channels', 'seam'],
  refusal: (positions, { channels, seam }) => {
    const least = colourTracksFor(positions);
    return (
      (seam === 'open' ? null : oddRefusal(positions)) ??
      channelsRefusal(positions, channels, { least, most: least, levels: 3 })
    );
  },
  build: (positions) => planFromDigits(positions % 2 === 0 ? closedCode(positions) : openCode(positions)),
};
