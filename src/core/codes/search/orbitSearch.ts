import type { Random } from '../../units/index.ts';
import type { TurnOrbits } from './cubeTurn.ts';
import type { StepCounter } from './limits.ts';

/** A code that repeats itself under a turn of the cube: `length` words, one on each of as many rings. */
export interface OrbitProblem {
  readonly orbits: TurnOrbits;
  /** Words before the code repeats itself turned. [-], n ≥ 1 */
  readonly length: number;
  /** Steps from one change of a channel to its next, at least. [-], 1..channels */
  readonly leastRun: number;
}

/** How a search ended: with the words of the whole code, with a proof that there is none, or without either. */
export type SearchEnd =
  | { readonly end: 'found'; readonly words: readonly number[] }
  | { readonly end: 'impossible' }
  | { readonly end: 'out-of-steps' };

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

function bitsSet(word: number): number {
  let bits = word - ((word >> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >> 2) & 0x33333333);
  return (((bits + (bits >> 4)) & 0x0f0f0f0f) * 0x01010101) >> 24;
}

/** One attempt from one first word, with its own order of trying. */
class Attempt {
  private readonly problem: OrbitProblem;
  private readonly first: number;
  private readonly isUsed: Uint8Array;
  private readonly lastUse: Int32Array;
  private readonly path: Int32Array;
  private readonly words: Int32Array;
  /** Words the code may close on: the first word turned v times, v and the order without common divisor. */
  private readonly goals: { readonly word: number; readonly turns: number }[];

  constructor(problem: OrbitProblem, first: number, banned: Uint8Array) {
    const { orbits, length } = problem;
    this.problem = problem;
    this.first = first;
    this.isUsed = banned.slice();
    this.lastUse = new Int32Array(orbits.channels).fill(-length - orbits.channels);
    this.path = new Int32Array(length);
    this.words = new Int32Array(length);
    this.goals = orbits.powers.flatMap((power, turns) =>
      gcd(turns, orbits.order) === 1 ? [{ word: power[first]!, turns }] : [],
    );
  }

  /** Number of free rings next to a word. */
  private freeAround(word: number): number {
    const { orbitOf, channels } = this.problem.orbits;
    let free = 0;
    for (let bit = 0; bit < channels; bit++) {
      const orbit = orbitOf[word ^ (1 << bit)]!;
      if (orbit >= 0 && !this.isUsed[orbit]) free += 1;
    }
    return free;
  }

  private isTooFar(word: number, stepsLeft: number): boolean {
    if (stepsLeft >= this.problem.orbits.channels) return false;
    return this.goals.every((goal) => bitsSet(goal.word ^ word) > stepsLeft);
  }

  /** Bits that may change at a depth, those that leave the fewest ways on first. */
  private choices(depth: number, random: Random): number[] {
    const { orbits, length, leastRun } = this.problem;
    const word = this.words[depth]!;
    const found: { bit: number; key: number }[] = [];
    for (let bit = 0; bit < orbits.channels; bit++) {
      if (depth - this.lastUse[bit]! < leastRun) continue;
      const next = word ^ (1 << bit);
      const orbit = orbits.orbitOf[next]!;
      if (orbit < 0 || this.isUsed[orbit] || this.isTooFar(next, length - depth - 1)) continue;
      found.push({ bit, key: this.freeAround(next) + 1.5 * random.uniform() });
    }
    return found.sort((a, b) => a.key - b.key).map(({ bit }) => bit);
  }

  /** Turns by which the last step closes the code, or null. */
  private closing(): { bit: number; turns: number } | null {
    const { length, leastRun } = this.problem;
    const last = this.words[length - 1]!;
    for (const { word, turns } of this.goals) {
      const change = last ^ word;
      if (bitsSet(change) !== 1) continue;
      const bit = 31 - Math.clz32(change);
      if (length - 1 - this.lastUse[bit]! < leastRun) continue;
      this.path[length - 1] = bit;
      if (this.usesAllChannels() && this.runsHold(turns)) return { bit, turns };
    }
    return null;
  }

  /** Whether the runs stay long across the seam where the code repeats itself turned. */
  private runsHold(turns: number): boolean {
    const { orbits, length, leastRun } = this.problem;
    const repeats = Math.min(orbits.order, Math.ceil(leastRun / length) + 1);
    const last = new Int32Array(orbits.channels).fill(-leastRun);
    for (let step = 0; step < length * repeats + Math.min(length, leastRun); step++) {
      const moves = orbits.moves[(turns * Math.floor(step / length)) % orbits.order]!;
      const bit = moves[this.path[step % length]!]!;
      if (step - last[bit]! < leastRun) return false;
      last[bit] = step;
    }
    return true;
  }

  /** Whether every channel changes somewhere in the turn. */
  private usesAllChannels(): boolean {
    const { moves, channels } = this.problem.orbits;
    const used = new Set<number>();
    for (const bit of new Set(this.path)) for (const move of moves) used.add(move[bit]!);
    return used.size === channels;
  }

  private wholeCode(turns: number): number[] {
    const { orbits, length } = this.problem;
    return Array.from({ length: length * orbits.order }, (_, step) => {
      const power = orbits.powers[(turns * Math.floor(step / length)) % orbits.order]!;
      return power[this.words[step % length]!]!;
    });
  }

  /** Depth-first from the first word; `impossible` means that no code passes through its ring. */
  run(random: Random, steps: StepCounter): SearchEnd {
    const { orbits, length } = this.problem;
    const open: number[][] = [];
    const before: number[] = [];
    let depth = 0;
    this.words[0] = this.first;
    this.isUsed[orbits.orbitOf[this.first]!] = 1;
    for (;;) {
      steps.step();
      if (steps.left <= 0) return { end: 'out-of-steps' };
      const closing = depth === length - 1 ? this.closing() : null;
      if (closing) return { end: 'found', words: this.wholeCode(closing.turns) };
      open[depth] = depth < length - 1 ? this.choices(depth, random) : [];
      while (open[depth]!.length === 0) {
        if (depth === 0) return { end: 'impossible' };
        this.isUsed[orbits.orbitOf[this.words[depth]!]!] = 0;
        depth -= 1;
        this.lastUse[this.path[depth]!] = before[depth]!;
      }
      const bit = open[depth]!.shift()!;
      before[depth] = this.lastUse[bit]!;
      this.lastUse[bit] = depth;
      this.path[depth] = bit;
      const next = this.words[depth]! ^ (1 << bit);
      depth += 1;
      this.words[depth] = next;
      this.isUsed[orbits.orbitOf[next]!] = 1;
    }
  }
}

/**
 * Searches a cyclic code that repeats itself under a turn of the cube, one channel changing a step.
 *
 * Attempts from drawn first words, each longer than the last. One that tries everything proves that no code
 * passes through that ring of words, and the ring is left out from then on.
 *
 * @returns The words of the whole turn in order; or whether their absence is proved.
 * @source derived: quotient of the cube by the turn, edges carrying how far they turn; see A. P. Hiltgen,
 *   K. G. Paterson, M. Brandestini, IEEE Trans. Inf. Theory 42 (1996) 1555 for the single-track case.
 * @check src/core/codes/search/orbitSearch.test.ts
 */
export function searchOrbits(problem: OrbitProblem, random: Random, steps: StepCounter): SearchEnd {
  const { orbits, length } = problem;
  const banned = new Uint8Array(orbits.count);
  const firstOf = new Int32Array(orbits.count).fill(-1);
  for (const [word, orbit] of orbits.orbitOf.entries())
    if (orbit >= 0 && firstOf[orbit] === -1) firstOf[orbit] = word;
  let attemptSteps = 20 * length + 200;
  for (let free = orbits.count; free >= length;) {
    if (steps.left <= 0) return { end: 'out-of-steps' };
    let orbit = Math.floor(random.uniform() * orbits.count);
    while (banned[orbit]) orbit = (orbit + 1) % orbits.count;
    const attempt = new Attempt(problem, firstOf[orbit]!, banned);
    const end = attempt.run(random, steps.part(attemptSteps));
    if (end.end === 'found') return end;
    if (end.end === 'impossible') {
      banned[orbit] = 1;
      free -= 1;
    } else attemptSteps *= 1.1;
  }
  return { end: 'impossible' };
}
