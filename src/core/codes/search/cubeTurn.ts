/**
 * A way to turn the cube of all two-level words onto itself: channels change places and some are inverted.
 *
 * Words that differ in one channel still do so afterwards, so a code that repeats itself under such a turn is
 * known from its first part alone.
 */
export interface CubeTurn {
  /** Bit b of a word goes to bit `moves[b]`. A permutation of 0..n-1, n = channels */
  readonly moves: readonly number[];
  /** Bits inverted after moving. */
  readonly inverts: number;
}

/** The words of a cube sorted into the rings a turn moves them round. */
export interface TurnOrbits {
  readonly channels: number;
  /** Turns that bring every word back. [-] */
  readonly order: number;
  /** Number of the ring a word is on, or -1 when that ring is shorter than `order`. n = 2^channels */
  readonly orbitOf: Int32Array;
  /** Rings of full length. [-] */
  readonly count: number;
  /** `powers[v][word]` is the word turned v times. n = order */
  readonly powers: readonly Int32Array[];
  /** `moves[v][bit]` is where v turns bring a bit. n = order */
  readonly moves: readonly Int32Array[];
}

/** Every channel one place on, round the circle: turns a word into the next of its necklace. */
export function rotation(channels: number): CubeTurn {
  return { moves: Array.from({ length: channels }, (_, b) => (b + 1) % channels), inverts: 0 };
}

/** As `rotation`, with the channel that comes round inverted: its own opposite after `channels` turns. */
export function invertingRotation(channels: number): CubeTurn {
  return { ...rotation(channels), inverts: 1 };
}

/** A word after one turn. */
function turned(word: number, { moves, inverts }: CubeTurn): number {
  let result = 0;
  for (const [from, to] of moves.entries()) result |= ((word >> from) & 1) << to;
  return result ^ inverts;
}

/** Where every word and every bit goes under 0, 1, 2 … turns, until all are back. */
function powersOf(turn: CubeTurn): Pick<TurnOrbits, 'powers' | 'moves'> {
  const channels = turn.moves.length;
  const once = Int32Array.from({ length: 2 ** channels }, (_, word) => turned(word, turn));
  const powers = [Int32Array.from(once.keys())];
  const moves = [Int32Array.from(turn.moves.keys())];
  for (;;) {
    const next = powers.at(-1)!.map((word) => once[word]!);
    if (next.every((word, start) => word === start)) return { powers, moves };
    powers.push(next);
    moves.push(moves.at(-1)!.map((bit) => turn.moves[bit]!));
  }
}

/** Sorts all words of the cube into the rings of a turn. */
export function turnOrbits(turn: CubeTurn): TurnOrbits {
  const { powers, moves } = powersOf(turn);
  const orbitOf = new Int32Array(powers[0]!.length).fill(-2);
  let count = 0;
  for (const word of orbitOf.keys()) {
    if (orbitOf[word] !== -2) continue;
    const ring = powers.map((power) => power[word]!);
    const isFull = new Set(ring).size === powers.length;
    for (const member of ring) orbitOf[member] = isFull ? count : -1;
    if (isFull) count += 1;
  }
  return { channels: turn.moves.length, order: powers.length, orbitOf, count, powers, moves };
}

/** One ring of channels that a turn moves round, and whether the one that comes round is inverted. */
interface ChannelRing {
  readonly size: number;
  readonly isInverting: boolean;
}

/** Every way to write a number as a sum of parts, largest first. */
function partitions(sum: number, most = sum): number[][] {
  if (sum === 0) return [[]];
  const parts = Array.from({ length: Math.min(sum, most) }, (_, i) => Math.min(sum, most) - i);
  return parts.flatMap((part) => partitions(sum - part, part).map((rest) => [part, ...rest]));
}

/** Every way to choose which rings invert; rings of one size are alike, so only their number counts. */
function inversions(sizes: readonly number[]): ChannelRing[][] {
  const [size, ...rest] = sizes;
  if (size === undefined) return [[]];
  const alike = sizes.filter((other) => other === size).length;
  const others = inversions(rest.slice(alike - 1));
  return Array.from({ length: alike + 1 }, (_, inverting) =>
    Array.from({ length: alike }, (_, i) => ({ size, isInverting: i < inverting })),
  ).flatMap((rings) => others.map((other) => [...rings, ...other]));
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Turns after which all rings are back. */
function orderOf(rings: readonly ChannelRing[]): number {
  return rings.reduce((order, { size, isInverting }) => {
    const own = isInverting ? 2 * size : size;
    return (order / gcd(order, own)) * own;
  }, 1);
}

/** The turn that moves each ring of channels one place round. */
function turnOf(rings: readonly ChannelRing[]): CubeTurn {
  const moves: number[] = [];
  let inverts = 0;
  for (const { size, isInverting } of rings) {
    const first = moves.length;
    if (isInverting) inverts |= 1 << first;
    for (let i = 0; i < size; i++) moves.push(first + ((i + 1) % size));
  }
  return { moves, inverts };
}

/**
 * Every turn of a cube, one of each kind, whose order divides a count of positions; the longest order first.
 *
 * @source the signed cycle types of the hyperoctahedral group: one for each conjugacy class.
 */
export function turnsDividing(positions: number, channels: number): readonly CubeTurn[] {
  return partitions(channels)
    .flatMap(inversions)
    .map((rings) => ({ order: orderOf(rings), turn: turnOf(rings) }))
    .filter(({ order }) => positions % order === 0)
    .sort((a, b) => b.order - a.order)
    .map(({ turn }) => turn);
}
