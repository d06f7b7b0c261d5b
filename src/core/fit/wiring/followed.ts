import type { Change } from '../levels/switching.ts';
import { isSingleStep, type CodeWalk } from './codeWalk.ts';
import type { Wiring } from './findWirings.ts';
import { isPassing, mayBePassing } from './moves.ts';

/** One edge of the disc seen to pass one channel. */
export interface Crossing {
  readonly stretch: number;
  readonly boundary: number;
  readonly channel: number;
  /** +1 when the disc angle grows, -1 when it falls. */
  readonly way: 1 | -1;
  /** Boundaries counted on over whole turns, so that it rises steadily while the disc angle does. */
  readonly count: number;
  readonly timeMs: number;
  readonly sigmaMs: number;
  /** Sample at which it was over. */
  readonly sample: number;
}

/** A recording followed through a code by one wiring. */
export interface Followed {
  readonly crossings: readonly Crossing[];
  /** Steps of the word to a neighbour, and all steps. [-] */
  readonly neighbourly: number;
  readonly steps: number;
  /** Time in words that the code has, and all time. [ms] */
  readonly legalMs: number;
  readonly allMs: number;
  /** Gaps seen, each with the time spent in it. [ms], n = gaps */
  readonly dwellMs: Float64Array;
  /** How far each stretch went from its start, way by way: growing and falling. [boundaries], n = stretches */
  readonly travelled: readonly (readonly [number, number])[];
  /** Words of the code that showed where none of the two neighbours was near. [-] */
  readonly jumps: number;
  /** Gap in which the first stretch began; `null` where it began with no word of the code. */
  readonly firstGap: number | null;
}

/** A word more than so many boundaries away is not a missed step but a misread. [boundaries] */
const FARTHEST_STEP = 3;

/** Words from far away that are not believed. [-] */
const STRAYS_MOST = 5;

/** Bits of the code's word that the columns show. */
function wordBits(columns: number, wiring: Wiring): number {
  let bits = 0;
  for (const [c, wire] of wiring.channels.entries()) {
    if (wire && ((columns >>> wire.column) & 1) !== Number(wire.inverted)) bits |= 1 << c;
  }
  return bits >>> 0;
}

/** Gaps that show each word. */
function gapsByBits(walk: CodeWalk): Map<number, number[]> {
  const gaps = new Map<number, number[]>();
  for (const [gap, bits] of walk.bits.entries()) {
    const same = gaps.get(bits);
    if (same) same.push(gap);
    else gaps.set(bits, [gap]);
  }
  return gaps;
}

/** Shortest way round from one gap to another, in boundaries. */
function stepBetween(from: number, to: number, count: number): number {
  const up = (((to - from) % count) + count) % count;
  return up > count / 2 ? up - count : up;
}

/** Follows stretches one after another. */
class Follower {
  readonly crossings: Crossing[] = [];
  readonly dwellMs: Float64Array;
  readonly travelled: [number, number][] = [];
  neighbourly = 0;
  steps = 0;
  legalMs = 0;
  allMs = 0;
  jumps = 0;
  firstGap: number | null = null;
  #strays = 0;
  readonly #gaps: Map<number, number[]>;
  readonly #single: boolean;
  readonly #walk: CodeWalk;
  readonly #wiring: Wiring;
  readonly #channelOf = new Map<number, number>();

  constructor(walk: CodeWalk, wiring: Wiring) {
    this.#walk = walk;
    this.#single = isSingleStep(walk);
    this.#wiring = wiring;
    this.#gaps = gapsByBits(walk);
    this.dwellMs = new Float64Array(walk.bits.length);
    for (const [c, wire] of wiring.channels.entries()) if (wire) this.#channelOf.set(wire.column, c);
  }

  take(
    stretch: number,
    first: readonly (0 | 1)[],
    changes: readonly Change[],
    spanMs: readonly [number, number],
  ): void {
    this.travelled[stretch] = [0, 0];
    let columns = first.reduce<number>((bits, bit, c) => (bit ? (bits | (1 << c)) >>> 0 : bits), 0);
    let from = spanMs[0];
    let at: number | null = null;
    let pending: Change[] = [];
    for (let i = 0; i <= changes.length; i++) {
      const until = changes[i]?.timeMs ?? spanMs[1];
      // Where several channels change at one boundary, words on the way from one to the next mean nothing.
      const shown = this.#gapOf(wordBits(columns, this.#wiring), at);
      const passes = !this.#single && i < changes.length && this.#passes(changes, i, at, shown);
      const gap = passes ? null : shown;
      if (!passes) this.allMs += until - from;
      if (gap !== null) {
        const reached: number = at === null ? gap : this.#step(stretch, at, gap, pending);
        if (this.#strays === 0) {
          this.legalMs += until - from;
          this.dwellMs[gap]! += until - from;
        }
        if (reached !== at) pending = [];
        at = reached;
        if (stretch === 0 && this.allMs === this.legalMs) this.firstGap ??= gap;
      }
      const change = changes[i];
      if (!change) break;
      pending.push(change);
      const bit = (1 << change.column) >>> 0;
      columns = (change.value ? columns | bit : columns & ~bit) >>> 0;
      from = until;
    }
  }

  /** Whether a word only came by on the way from one to the next: too short, or short and not a neighbour. */
  #passes(changes: readonly Change[], i: number, at: number | null, shown: number | null): boolean {
    if (isPassing(changes, i)) return true;
    if (at === null || shown === null || !mayBePassing(changes, i)) return false;
    return Math.abs(stepBetween(this.#wrapped(at), shown, this.#walk.bits.length)) > 1;
  }

  /** Gap of a word, the one nearest to the last where several show it. */
  #gapOf(bits: number, last: number | null): number | null {
    const gaps = this.#gaps.get(bits);
    if (!gaps) return null;
    if (gaps.length === 1) return gaps[0]!;
    if (last === null) return null;
    const count = this.#walk.bits.length;
    const near = this.#wrapped(last);
    return gaps.reduce((best, gap) =>
      Math.abs(stepBetween(near, gap, count)) < Math.abs(stepBetween(near, best, count)) ? gap : best,
    );
  }

  #wrapped(gap: number): number {
    const count = this.#walk.bits.length;
    return ((gap % count) + count) % count;
  }

  /** Goes from one gap, counted over turns, to another; gives where it stands then, counted on. */
  #step(stretch: number, at: number, gap: number, pending: readonly Change[]): number {
    const step = stepBetween(this.#wrapped(at), gap, this.#walk.bits.length);
    if (step === 0) return at;
    if (Math.abs(step) > FARTHEST_STEP) {
      this.jumps += 1;
      this.#strays += 1;
      // A word from far away is a misread, or shows between two edges of one boundary; only many in a row are believed.
      if (this.#strays <= STRAYS_MOST) return at;
    }
    this.#strays = 0;
    this.steps += 1;
    if (Math.abs(step) === 1) this.neighbourly += 1;
    if (Math.abs(step) > FARTHEST_STEP) return at + step;
    const way = step > 0 ? 1 : -1;
    this.travelled[stretch]![way > 0 ? 0 : 1] += Math.abs(step);
    for (let passed = 0; passed !== step; passed += way) {
      // Growing from gap g crosses boundary g + 1, falling from it boundary g.
      this.#cross(stretch, way > 0 ? at + passed + 1 : at + passed, way, pending);
    }
    return at + step;
  }

  #cross(stretch: number, count: number, way: 1 | -1, pending: readonly Change[]): void {
    const boundary = this.#wrapped(count);
    const { changing, risesTo } = this.#walk.boundaries[boundary]!;
    const to = way > 0 ? risesTo : changing & ~risesTo;
    for (const [channel, wire] of this.#wiring.channels.entries()) {
      if (!wire || ((changing >>> channel) & 1) === 0) continue;
      const value = ((to >>> channel) & 1) !== Number(wire.inverted) ? 1 : 0;
      const change = pending.findLast((c) => c.column === wire.column && c.value === value);
      if (!change) continue;
      const { timeMs, sigmaMs, sample } = change;
      this.crossings.push({ stretch, boundary, channel, way, count, timeMs, sigmaMs, sample });
    }
  }
}

/** What a stretch begins with and ends at, beside its changes. */
export interface FollowInput {
  readonly first: readonly (0 | 1)[];
  readonly changes: readonly Change[];
  readonly spanMs: readonly [number, number];
}

/** Follows a whole recording through a code by one wiring; crossings come out in order of time within each stretch. */
export function followed(walk: CodeWalk, wiring: Wiring, stretches: readonly FollowInput[]): Followed {
  const follower = new Follower(walk, wiring);
  for (const [i, { first, changes, spanMs }] of stretches.entries()) follower.take(i, first, changes, spanMs);
  const { crossings, neighbourly, steps, legalMs, allMs, dwellMs, travelled, jumps, firstGap } = follower;
  crossings.sort((a, b) => a.stretch - b.stretch || a.timeMs - b.timeMs);
  return { crossings, neighbourly, steps, legalMs, allMs, dwellMs, travelled, jumps, firstGap };
}
