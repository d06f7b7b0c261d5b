import type { CodeFamily } from '../family.ts';
import type { Level } from '../model.ts';
import { channelsRefusal } from './refusals.ts';
import { colourTracksFor, planFromDigits, walkLastDigit, type Digits } from './ternaryWords.ts';

/** The modular code of all words: digit i is the difference of two neighbouring digits of the count. */
function fullCode(channels: number): Digits[] {
  const digitOf = (count: number, place: number): number => Math.floor(count / 3 ** place) % 3;
  return Array.from({ length: 3 ** channels }, (_, count) =>
    Array.from({ length: channels }, (_, c) => {
      const place = channels - 1 - c;
      return ((digitOf(count, place) - digitOf(count, place + 1) + 3) % 3) as Level;
    }),
  );
}

/** Where the last digit stands at each of `count` words and after the last: never twice the same, back at 0 at the end. */
function stops(count: number): Level[] {
  const odd: Level[] = [0, 1, 2, 0];
  const start = count % 2 === 0 ? odd.slice(0, 1) : odd;
  return Array.from(
    { length: count + 1 },
    (_, k) => start[k] ?? (((k - start.length) % 2 === 0 ? 2 : 0) as Level),
  );
}

/** A circle of any length in which one digit changes a step, to either of its other levels. */
function shortenedCode(positions: number): Digits[] {
  const channels = colourTracksFor(positions);
  if (positions === 3 ** channels) return fullCode(channels);
  if (channels === 1) return [[0], [1]];
  const shorter = shortenedCode(Math.ceil(positions / 3));
  const spare = 3 * shorter.length - positions;
  const at = stops(shorter.length);
  const walks = shorter.map((_, k): Level[] => {
    const [from, to] = [at[k]!, at[k + 1]!];
    // The first words give up the level between, until the count is right.
    return k < spare ? [from, to] : [from, (3 - from - to) as Level, to];
  });
  return walkLastDigit(shorter, walks);
}

/**
 * Three colours on every track, one of them changing a step, for any count and odd ones too.
 *
 * A change may go from any colour to any other, so it suits colours of which none lies in a blend of the other two. Read
 * as grey levels it would pass through the middle level on every change between 0 and 2, and show a wrong position.
 *
 * @source modular Gray code, digit i = (b_i - b_(i+1)) mod 3 (Wikipedia, Gray code, section n-ary); shorter counts derived:
 *   the last digit walks through two or three levels at each word of a code for a third of the count.
 * @check test/published/ternary
 */
export const ternaryModular: CodeFamily = {
  name: 'ternary-modular',
  title: 'three-colour',
  options: ['channels'],
  refusal: (positions, { channels }) => {
    const least = colourTracksFor(positions);
    return channelsRefusal(positions, channels, { least, most: least, levels: 3 });
  },
  build: (positions) => planFromDigits(shortenedCode(positions)),
};
