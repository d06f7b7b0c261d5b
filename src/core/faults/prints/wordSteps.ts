import type { CodeTable, Word } from '../../codes/index.ts';
import type { FaultSample } from '../readings/seen.ts';

/** Samples further apart than this tell nothing of how the vane went from one word to the next. [ms] */
const STEP_MOST_MS = 300_000;
/** Different pairs of words that are counted; more is rubbish. [-] */
const PAIRS_MOST = 50_000;

/** How often each word followed each other one; one pass, and tables of parts of a record add up. */
export class WordSteps {
  /** Counts by `word word`. */
  readonly counts = new Map<string, number>();
  #last: { readonly atMs: number; readonly word: Word } | null = null;

  /** One sample, in order of time; one without a word ends the walk. [ms UTC] */
  add({ atMs, word }: Pick<FaultSample, 'atMs' | 'word'>): void {
    const last = this.#last;
    this.#last = word === null ? null : { atMs, word };
    if (!last || word === null || atMs - last.atMs > STEP_MOST_MS) return;
    const pair = `${last.word} ${word}`;
    const count = this.counts.get(pair);
    if (count === undefined && this.counts.size >= PAIRS_MOST) return;
    this.counts.set(pair, (count ?? 0) + 1);
  }
}

/** One pair of words, as indices of the words that any candidate shows, and how often it came. [-] */
export interface CountedStep {
  readonly from: Word;
  readonly to: Word;
  readonly count: number;
}

/** The counted steps of words that have as many digits as the code has channels. */
export function countedSteps(steps: WordSteps, { channels }: Pick<CodeTable, 'channels'>): CountedStep[] {
  return [...steps.counts].flatMap(([pair, count]) => {
    const [from, to] = pair.split(' ') as [Word, Word];
    return from.length === channels.length && to.length === channels.length ? [{ from, to, count }] : [];
  });
}
