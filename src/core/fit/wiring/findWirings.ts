import type { CodeWalk } from './codeWalk.ts';
import { best, bitCount, goneOn, LOST_TRACK, seeded, type Guess } from './guesses.ts';
import type { Move } from './moves.ts';

/** One channel of the code and the column that shows it. */
export interface ChannelWire {
  readonly column: number;
  /** The column reads 1 where the code has 0. */
  readonly inverted: boolean;
}

/** Which column shows which channel. */
export interface Wiring {
  /** Channel 0 first; `null` for a channel that no column shows. n = channels of the code */
  readonly channels: readonly (ChannelWire | null)[];
  /** Channels whose column the recording leaves open; the drawing's own is taken. */
  readonly undecided: readonly number[];
}

/** A stretch as the search sees it. */
export interface Walked {
  readonly firstBits: number;
  readonly moves: readonly Move[];
}

/** Guesses kept at once, and how much dearer than the cheapest. */
const MOST_GUESSES = 6000;
const SPREAD = 9;
/** No more moves than this many turns need be looked at: by then nothing is left open. [turns] */
const TURNS_ENOUGH = 3;
/** What it costs to forget all that was believed of the wires. */
const FORGETTING = 1;
/** A code that loses track this often is not the disc's: the search gives up. [-] */
const PATIENCE = 60;
/** Channels without a column that are searched for; with more missing there are too few to tell. */
export const MOST_LOST = 2;

/** Every set of `count` channels as bits, `count` being 0, 1 or 2. */
function lostSets(channels: number, count: number): number[] {
  if (count === 0) return [0];
  const singles = Array.from({ length: channels }, (_, c) => (1 << c) >>> 0);
  if (count === 1) return singles;
  return singles.flatMap((one, c) => singles.slice(c + 1).map((other) => (one | other) >>> 0));
}

/**
 * Every wiring that explains the moves of a recording, found by narrowing what each column can be.
 *
 * Every place of the disc and both ways round are tried at once; each move strikes out the channels a column cannot be.
 * The work grows with boundaries times moves, not with the number of arrangements.
 *
 * @param stretches - Longest first serves best.
 * @param live - Columns that change, as bits.
 * @returns Cheapest first: few turnings back and little lost track. Empty when nothing explains the recording.
 */
export function findWirings(
  walk: CodeWalk,
  stretches: readonly Walked[],
  live: number,
  columns: number,
): Wiring[] {
  const missing = walk.channels - bitCount(live);
  if (missing < 0 || missing > MOST_LOST) return [];
  const every = (2 ** walk.channels - 1) >>> 0;
  const open = (): Uint32Array =>
    Uint32Array.from({ length: columns }, (_, r) => (((live >>> r) & 1) === 1 ? every : 0));
  let known: Pick<Guess, 'plain' | 'turned' | 'lost' | 'cost'>[] = lostSets(walk.channels, missing).map(
    (lost) => {
      const wired = open().map((mask) => mask & ~lost);
      return { plain: wired, turned: wired.slice(), lost, cost: 0 };
    },
  );
  let left = TURNS_ENOUGH * walk.boundaries.length + 60;
  for (const { firstBits, moves } of stretches) {
    if (left <= 0) break;
    const guesses = walked(walk, known, firstBits, moves.slice(0, left));
    if (guesses.length > 0) known = distinct(guesses);
    if (known[0]!.cost > PATIENCE) return [];
    left -= moves.length;
  }
  const cheapest = known.reduce((low, { cost }) => Math.min(low, cost), Infinity);
  return known
    .filter(({ cost }) => cost <= cheapest + 2)
    .flatMap((guess) => wiringOf(guess, walk.channels, columns) ?? []);
}

/** Guesses left after one stretch; where none can go on, all are placed anew with what is known of the wires. */
function walked(
  walk: CodeWalk,
  known: readonly Pick<Guess, 'plain' | 'turned' | 'lost' | 'cost'>[],
  firstBits: number,
  moves: readonly Move[],
): Guess[] {
  let bits = firstBits;
  let guesses: Guess[] = [];
  for (const from of known) seeded(walk, from, bits, guesses);
  for (const move of moves) {
    const next: Guess[] = [];
    for (const guess of guesses) goneOn(guess, walk, move, next);
    bits = ((bits & ~move.changed) | move.to) >>> 0;
    if (next.length === 0) {
      const dearest = guesses.reduce((most, { cost }) => Math.max(most, cost), 0);
      for (const from of distinct(guesses))
        seeded(walk, { ...from, cost: from.cost + LOST_TRACK }, bits, next);
      // What was believed of the wires may have been the mistake: it is forgotten too, at a price.
      for (const from of known)
        seeded(walk, { ...from, cost: dearest + LOST_TRACK + FORGETTING }, bits, next);
    }
    if (next.length > 0 && next[0]!.cost > PATIENCE) return next;
    guesses = best(next, Math.max(MOST_GUESSES, 4 * walk.boundaries.length), SPREAD);
  }
  return guesses;
}

/** Guesses that differ in their wires, places forgotten; the cheapest of each. */
function distinct(guesses: readonly Guess[]): Guess[] {
  const kept = new Map<string, Guess>();
  for (const guess of [...guesses].sort((a, b) => a.cost - b.cost)) {
    const key = `${guess.lost};${guess.plain.join('.')};${guess.turned.join('.')}`;
    if (!kept.has(key)) kept.set(key, guess);
  }
  return [...kept.values()];
}

/** A column's channel is no other column's: strikes that out until nothing changes; `null` when a column has none left. */
function exclusive(plain: Uint32Array, turned: Uint32Array): boolean {
  for (let changed = true; changed;) {
    changed = false;
    for (let r = 0; r < plain.length; r++) {
      const may = plain[r]! | turned[r]!;
      if (bitCount(may) !== 1) continue;
      for (let other = 0; other < plain.length; other++) {
        const otherMay = plain[other]! | turned[other]!;
        if (other === r || (otherMay & may) === 0) continue;
        plain[other]! &= ~may;
        turned[other]! &= ~may;
        if ((plain[other]! | turned[other]!) === 0) return false;
        changed = true;
      }
    }
  }
  return true;
}

/** The wires of a guess; what is left open is taken as drawn where that is possible. */
function wiringOf(
  guess: Pick<Guess, 'plain' | 'turned' | 'lost'>,
  channels: number,
  columns: number,
): Wiring | null {
  const plain = guess.plain.slice();
  const turned = guess.turned.slice();
  if (!exclusive(plain, turned)) return null;
  const wires: (ChannelWire | null)[] = new Array<ChannelWire | null>(channels).fill(null);
  const undecided: number[] = [];
  const order = Array.from({ length: columns }, (_, r) => r)
    .filter((r) => (plain[r]! | turned[r]!) !== 0)
    .sort((a, b) => bitCount(plain[a]! | turned[a]!) - bitCount(plain[b]! | turned[b]!));
  for (const column of order) {
    const may = plain[column]! | turned[column]!;
    const free = Array.from({ length: channels }, (_, c) => c).filter(
      (c) => ((may >>> c) & 1) === 1 && !wires[c],
    );
    const channel = free.includes(column) ? column : free[0];
    if (channel === undefined) return null;
    const isPlain = ((plain[column]! >>> channel) & 1) === 1;
    const isTurned = ((turned[column]! >>> channel) & 1) === 1;
    if (free.length > 1 || (isPlain && isTurned)) undecided.push(channel);
    wires[channel] = { column, inverted: !isPlain };
  }
  return { channels: wires, undecided };
}
