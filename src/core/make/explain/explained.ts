import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';

/** What the page is about. */
export interface Explained {
  readonly instrument: Instrument;
  readonly head: HeadPlan;
}

/** How many channels change from one position to the next, at most. */
export function mostChanges({ head }: Explained): number {
  const { words } = head.disc.code;
  return Math.max(
    ...words.map(
      (word, k) => [...word].filter((level, c) => level !== words[(k + 1) % words.length]![c]).length,
    ),
  );
}
