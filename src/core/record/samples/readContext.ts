import type { Ledger } from '../ledger/ledger.ts';
import type { Sample } from './sample.ts';
import type { ReadingRule } from './readingRule.ts';
import type { StreamHead } from './streamHead.ts';

/** What every reader of lines works with. */
export interface ReadContext {
  readonly head: StreamHead;
  readonly rule: ReadingRule;
  readonly ledger: Ledger;
  /** Where samples go. */
  emit(sample: Sample): void;
}

/** One line of text as it comes to a reader. */
export interface TextLine {
  /** Line of the source, from 1. [-] */
  readonly number: number;
  readonly text: string;
  /** Clock of this machine when its end came, or `null`. [ms UTC] */
  readonly arrivedMs: number | null;
  /** Time that a serial monitor wrote in front, or `null`. [ms since midnight] */
  readonly timeOfDayMs: number | null;
}
