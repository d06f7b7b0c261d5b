import type { Change } from '../levels/switching.ts';

/** Columns that change together, as one step of the word. */
export interface Move {
  /** Columns that change, as bits; and those of them that read 1 afterwards. */
  readonly changed: number;
  readonly to: number;
  readonly timeMs: number;
  /** So soon followed by the next that both may belong to one boundary. */
  readonly mayJoinNext: boolean;
}

/** Changes this much nearer to each other than the usual dwell belong to one boundary of a code that flips several. */
const TOGETHER_SHARE = 0.3;
/** Up to this share of the dwell it may be one boundary that edges far off their places have torn apart. */
const TORN_SHARE = 0.75;
/** The usual dwell is that of so many changes around. [-] */
const AROUND = 24;

/**
 * Changes of one stretch as steps of the word.
 *
 * @param changes - In order of time.
 * @param single - The code changes one channel at a time, so that every change is a step of its own.
 */
export function movesOf(changes: readonly Change[], single: boolean): Move[] {
  const moves: Move[] = [];
  for (const [i, { column, value, timeMs }] of changes.entries()) {
    const last = moves.at(-1);
    const bit = (1 << column) >>> 0;
    const joins = !single && last && i > 0 && isPassing(changes, i);
    if (joins && (last.changed & bit) === 0) {
      moves[moves.length - 1] = {
        changed: (last.changed | bit) >>> 0,
        to: (last.to | (value ? bit : 0)) >>> 0,
        timeMs: last.timeMs,
        mayJoinNext: mayJoin(changes, i + 1, single),
      };
    } else
      moves.push({ changed: bit, to: value ? bit : 0, timeMs, mayJoinNext: mayJoin(changes, i + 1, single) });
  }
  return moves;
}

/** How long the word before a change lasted, beside the usual. [-] */
export function dwellShare(changes: readonly Change[], at: number): number {
  const usual = usualDwell(changes, at);
  return at === 0 || usual === 0 ? Infinity : (changes[at]!.timeMs - changes[at - 1]!.timeMs) / usual;
}

/** True when the word before a change lasted too short to be one of its own: the boundary was still passing. */
export function isPassing(changes: readonly Change[], at: number): boolean {
  return dwellShare(changes, at) < TOGETHER_SHARE;
}

/** True when it lasted so short that it may have been one on the way. */
export function mayBePassing(changes: readonly Change[], at: number): boolean {
  return dwellShare(changes, at) < TORN_SHARE;
}

function mayJoin(changes: readonly Change[], next: number, single: boolean): boolean {
  return !single && next < changes.length && mayBePassing(changes, next);
}

/** Three quarters of the pauses around are shorter than this. [ms] */
function usualDwell(changes: readonly Change[], at: number): number {
  const from = Math.max(1, at - AROUND);
  const pauses: number[] = [];
  for (let i = from; i < Math.min(changes.length, at + AROUND); i++) {
    pauses.push(changes[i]!.timeMs - changes[i - 1]!.timeMs);
  }
  return pauses.sort((a, b) => a - b)[Math.floor(0.75 * pauses.length)] ?? 0;
}
