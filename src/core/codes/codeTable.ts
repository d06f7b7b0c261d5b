import { VanewrightError } from '../error/index.ts';
import type { Degrees } from '../units/index.ts';
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
  /** Position of a word, or `null` where the code never shows it. */
  positionOf(word: Word): number | null;
}

/** Word that tracks and channels show at a disc angle of the head's reference line. */
export function wordAt(plan: CodePlan, angle: Degrees): Word {
  return plan.channels.map(({ track, angleDeg }) => levelAt(plan.tracks[track]!, angle + angleDeg)).join('');
}

/** Middle of a position's step: position k covers [k, k+1) * 360/N. [deg] */
export function positionCentreDeg(position: number, positions: number): Degrees {
  return ((position + 0.5) * 360) / positions;
}

/**
 * The code table of a set of tracks and channels.
 *
 * @throws `codes/word-repeats` when two positions show the same word, so that they cannot be told apart.
 */
export function codeTable(family: string, positions: number, plan: CodePlan): CodeTable {
  const words: Word[] = [];
  const positionByWord = new Map<Word, number>();
  for (let position = 0; position < positions; position++) {
    const word = wordAt(plan, positionCentreDeg(position, positions));
    const twin = positionByWord.get(word);
    if (twin !== undefined) {
      throw new VanewrightError({
        code: 'codes/word-repeats',
        what: 'Two positions of the disc show the same word, so they cannot be told apart.',
        where: 'disc.code',
        got: `word ${word} at positions ${twin} and ${position}`,
        allowed: 'a different word at every position',
        fix: 'Add a channel, move a channel to another angle, or ask for fewer positions.',
      });
    }
    positionByWord.set(word, position);
    words.push(word);
  }
  return { ...plan, family, positions, words, positionOf: (word) => positionByWord.get(word) ?? null };
}
