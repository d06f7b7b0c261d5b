import { stepFrom, type CodeWalk } from './codeWalk.ts';
import type { Move } from './moves.ts';

/**
 * One way to understand a recording so far: where the disc stands, which way it goes, and what each column may be.
 *
 * `plain[r]` holds the channels that column r may show as they are, `turned[r]` those it may show inverted.
 */
export interface Guess {
  readonly gap: number;
  readonly way: 1 | -1;
  readonly plain: Uint32Array;
  readonly turned: Uint32Array;
  /** Channels of the code that no column shows. */
  readonly lost: number;
  /** Boundary passed ahead of its turn, which the next move must make good; -1 for none. */
  readonly owed: number;
  /** Half of a torn boundary, waiting for the other half; `null` for none. */
  readonly held: Move | null;
  readonly cost: number;
}

/** What it costs to believe that the maker turned back, that two edges came in the wrong order, and that we lost track. */
const TURNING_BACK = 2;
const WRONG_ORDER = 4;
const TORN_APART = 1;
export const LOST_TRACK = 6;

/** Narrows what the columns may be by one boundary crossed; `null` when some column can be nothing any more. */
function narrowed(
  guess: Guess,
  walk: CodeWalk,
  boundary: number,
  way: 1 | -1,
  move: Move,
): Pick<Guess, 'plain' | 'turned'> | null {
  const { changing, risesTo } = walk.boundaries[boundary]!;
  const wired = changing & ~guess.lost;
  const to = way > 0 ? risesTo : changing & ~risesTo;
  const [ones, zeros] = [wired & to, wired & ~to];
  const plain = guess.plain.slice();
  const turned = guess.turned.slice();
  let seen = 0;
  for (let column = 0; column < plain.length; column++) {
    if (plain[column] === 0 && turned[column] === 0) continue;
    const bit = (1 << column) >>> 0;
    if ((move.changed & bit) !== 0) {
      const isOne = (move.to & bit) !== 0;
      plain[column]! &= isOne ? ones : zeros;
      turned[column]! &= isOne ? zeros : ones;
      seen += 1;
    } else {
      plain[column]! &= ~wired;
      turned[column]! &= ~wired;
    }
    if (plain[column] === 0 && turned[column] === 0) return null;
  }
  return seen === bitCount(wired) ? { plain, turned } : null;
}

/** Bits set in a number. [-] */
export function bitCount(bits: number): number {
  let count = 0;
  for (let left = bits >>> 0; left !== 0; left = (left & (left - 1)) >>> 0) count++;
  return count;
}

/** Every way a guess can go on with the next move. */
export function goneOn(guess: Guess, walk: CodeWalk, next: Move, into: Guess[]): void {
  const { held } = guess;
  if (held && (held.changed & next.changed) !== 0) return;
  const move = held
    ? { ...next, changed: (held.changed | next.changed) >>> 0, to: (held.to | next.to) >>> 0 }
    : next;
  if (next.mayJoinNext) into.push({ ...guess, held: move, cost: guess.cost + TORN_APART });
  stepped(held ? { ...guess, held: null } : guess, walk, move, into);
}

function stepped(guess: Guess, walk: CodeWalk, move: Move, into: Guess[]): void {
  if (guess.owed >= 0) {
    const masks = narrowed(guess, walk, guess.owed, guess.way, move);
    if (masks) into.push({ ...guess, ...masks, owed: -1 });
    return;
  }
  const ahead = stepFrom(walk, guess.gap, guess.way, guess.lost);
  if (!ahead) return;
  const forward = narrowed(guess, walk, ahead.boundary, guess.way, move);
  if (forward) into.push({ ...guess, ...forward, gap: ahead.gap });
  const back: 1 | -1 = guess.way > 0 ? -1 : 1;
  const behind = stepFrom(walk, guess.gap, back, guess.lost)!;
  const turnedBack = narrowed(guess, walk, behind.boundary, back, move);
  if (turnedBack)
    into.push({ ...guess, ...turnedBack, gap: behind.gap, way: back, cost: guess.cost + TURNING_BACK });
  if (forward || turnedBack) return;
  // The edge after next has come first: the one left out is owed.
  const after = stepFrom(walk, ahead.gap, guess.way, guess.lost)!;
  const swapped = narrowed(guess, walk, after.boundary, guess.way, move);
  if (swapped)
    into.push({ ...guess, ...swapped, gap: after.gap, owed: ahead.boundary, cost: guess.cost + WRONG_ORDER });
}

/** Every place and way in which a set of possible wirings can begin with the bits seen first. */
export function seeded(
  walk: CodeWalk,
  from: Pick<Guess, 'plain' | 'turned' | 'lost' | 'cost'>,
  firstBits: number,
  into: Guess[],
): void {
  for (let gap = 0; gap < walk.bits.length; gap++) {
    const ones = walk.bits[gap]!;
    const plain = from.plain.slice();
    const turned = from.turned.slice();
    let isPossible = true;
    for (let column = 0; column < plain.length && isPossible; column++) {
      if (plain[column] === 0 && turned[column] === 0) continue;
      const isOne = ((firstBits >>> column) & 1) === 1;
      plain[column]! &= isOne ? ones : ~ones;
      turned[column]! &= isOne ? ~ones : ones;
      isPossible = plain[column] !== 0 || turned[column] !== 0;
    }
    if (!isPossible) continue;
    for (const way of [1, -1] as const) into.push({ ...from, plain, turned, gap, way, owed: -1, held: null });
  }
}

/** Two guesses with the same key can never come apart again: the cheaper one stands for both. */
function keyOf({ gap, way, plain, turned, lost, owed, held }: Guess): string {
  return `${gap},${way},${owed},${held?.changed ?? 0},${lost},${plain.join('.')},${turned.join('.')}`;
}

/** The cheapest guesses, each state once. */
export function best(guesses: Guess[], most: number, spread: number): Guess[] {
  const least = guesses.reduce((low, { cost }) => Math.min(low, cost), Infinity);
  const kept = new Map<string, Guess>();
  for (const guess of guesses.filter(({ cost }) => cost <= least + spread).sort((a, b) => a.cost - b.cost)) {
    const key = keyOf(guess);
    if (!kept.has(key)) kept.set(key, guess);
    if (kept.size >= most) break;
  }
  return [...kept.values()];
}
