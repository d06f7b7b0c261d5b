import { VanewrightError } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';
import type { CodeBuild, SearchReport, Strobe } from './family.ts';
import type { CodePlan, Word } from './model.ts';
import { levelAt } from './track.ts';

/** The N words of a code in order, made from its tracks and channels, never the other way round. */
export interface CodeTable extends CodePlan {
  /** Name of the family that built it, as in the instrument file. */
  readonly family: string;
  /** N, the number of equal steps of a turn. */
  readonly positions: number;
  /** Word of each position, read at the middle of its step. n = positions */
  readonly words: readonly Word[];
  /** Every position has a word of its own, so one reading tells it. `false` for a wheel that only counts. */
  readonly absolute: boolean;
  /** Channel that tells when the others may be read; `null` where the word may always be read. */
  readonly strobe: Strobe | null;
  /** How many channels, from the first, only count steps; `null` for every code that one reading tells. [-] */
  readonly countingChannels: number | null;
  /** What the search for this code did; `null` where it needed none. */
  readonly search: SearchReport | null;
  /** Position of a word, or `null` where the code never shows it, or shows it at several positions. */
  positionOf(word: Word): number | null;
  /**
   * Position a reader shows for a word when it last showed `last`: for most codes simply `positionOf`.
   *
   * Between two strobes the last position stands. A counting wheel takes the nearest position that shows the word.
   *
   * @param last - Position shown before, or `null` at switching on.
   * @returns Position, or `null` where the word is illegal, or where two positions are equally near.
   */
  nextPosition(word: Word, last: number | null): number | null;
}

/**
 * Word that tracks and channels show at a disc angle of the head's reference line.
 *
 * @param angle - Any finite value, taken round the circle. [deg]
 */
export function wordAt(plan: CodePlan, angle: Degrees): Word {
  return plan.channels.map(({ track, angleDeg }) => levelAt(plan.tracks[track]!, angle + angleDeg)).join('');
}

/** Middle of a position's step: position k covers [k, k+1) * 360/N. [deg] */
export function positionCentreDeg(position: number, positions: number): Degrees {
  return ((position + 0.5) * 360) / positions;
}

/** Circular distance of two positions. [positions] */
export function positionsApart(a: number, b: number, positions: number): number {
  const apart = Math.abs(a - b) % positions;
  return Math.min(apart, positions - apart);
}

/** The positions at which each word shows. */
function positionsByWord(words: readonly Word[]): Map<Word, number[]> {
  const byWord = new Map<Word, number[]>();
  for (const [position, word] of words.entries()) {
    const twins = byWord.get(word);
    if (twins) twins.push(position);
    else byWord.set(word, [position]);
  }
  return byWord;
}

/** Throws at the first two positions that cannot be told apart. */
function refuseTwins(byWord: ReadonlyMap<Word, readonly number[]>): void {
  for (const [word, [first, second]] of byWord) {
    if (second === undefined) continue;
    throw new VanewrightError({
      code: 'codes/word-repeats',
      what: 'Two positions of the disc show the same word, so they cannot be told apart.',
      where: 'disc.code',
      got: `word ${word} at positions ${first} and ${second}`,
      allowed: 'a different word at every position',
      fix: 'Add a channel, move a channel to another angle, or ask for fewer positions.',
    });
  }
}

/** The position nearest to `last` among some, or `null` where two are equally near. */
function nearestTo(last: number, among: readonly number[], positions: number): number | null {
  let [nearest, least, isTied]: [number | null, number, boolean] = [null, Infinity, false];
  for (const position of among) {
    const apart = positionsApart(position, last, positions);
    if (apart < least) [nearest, least, isTied] = [position, apart, false];
    else if (apart === least) isTied = true;
  }
  return isTied ? null : nearest;
}

/**
 * The code table of a set of tracks and channels.
 *
 * @param positions - N. [-], whole
 * @throws `codes/word-repeats` when two positions show the same word and the plan is not one that counts.
 */
export function codeTable(family: string, positions: number, plan: CodeBuild): CodeTable {
  const { tracks, channels, strobe = null, search = null, countingChannels = null } = plan;
  const words = Array.from({ length: positions }, (_, k) => wordAt(plan, positionCentreDeg(k, positions)));
  const byWord = positionsByWord(words);
  if (countingChannels === null) refuseTwins(byWord);
  const positionOf = (word: Word): number | null => {
    const found = byWord.get(word);
    return found?.length === 1 ? found[0]! : null;
  };
  const table = { tracks, channels, family, positions, words, strobe, search, countingChannels, positionOf };
  const absolute = byWord.size === positions;
  if (countingChannels === null) {
    const isHeld = (word: Word): boolean => strobe !== null && word[strobe.channel] !== String(strobe.level);
    return { ...table, absolute, nextPosition: (word, last) => (isHeld(word) ? last : positionOf(word)) };
  }
  const byCount = positionsByWord(words.map((word) => word.slice(0, countingChannels)));
  const nextPosition = (word: Word, last: number | null): number | null => {
    const known = positionOf(word);
    if (known !== null || last === null) return known;
    return nearestTo(last, byCount.get(word.slice(0, countingChannels)) ?? [], positions);
  };
  return { ...table, absolute, nextPosition };
}
