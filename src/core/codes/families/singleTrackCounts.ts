import type { CodeOptions } from '../family.ts';
import { POSITIONS_RANGE } from '../model.ts';

/** Most channels the search takes: its tables hold every word. */
export const MOST_SEARCHED_CHANNELS = 16;

/** How the heads of a single-track code stand: the two families differ in what repeats round the turn. */
export type Placement = NonNullable<CodeOptions['headPlacement']>;

/** Sum over the divisors d of n with weight(d): the inversion that leaves out words with a shorter period. */
function overDivisors(n: number, weight: (divisor: number) => number): number {
  let sum = 0;
  for (let d = 1; d <= n; d++) if (n % d === 0) sum += moebius(d) * weight(d);
  return sum;
}

/** Möbius function: 0 where a square divides n, else ±1 by the number of primes. */
function moebius(n: number): number {
  let sign = 1;
  let rest = n;
  for (let p = 2; p * p <= rest; p++) {
    if (rest % p !== 0) continue;
    rest /= p;
    if (rest % p === 0) return 0;
    sign = -sign;
  }
  return rest > 1 ? -sign : sign;
}

/** Rings of 2n words under the rotation that inverts what comes round; also the necklaces of odd weight. */
function invertingRings(n: number): number {
  return overDivisors(n, (d) => (d % 2 === 1 ? 2 ** (n / d) : 0)) / (2 * n);
}

/** Rings of n words under plain rotation, of even weight. */
function evenNecklaces(n: number): number {
  return overDivisors(n, (d) => 2 ** (n / d)) / n - invertingRings(n);
}

/** How many words such a code has before it repeats itself turned; `null` where parity or room forbids it. */
export type QuotientLength = number | null;

/**
 * Words before a code of plain necklaces repeats itself turned: heads at multiples of P/n.
 *
 * @source derived: one step changes the weight by one, so even and odd necklaces alternate and m = P/n is even.
 */
export function necklaceLength(channels: number, positions: number): QuotientLength {
  const length = positions / channels;
  const most = 2 * Math.min(evenNecklaces(channels), invertingRings(channels));
  return length % 2 === 0 && length <= most ? length : null;
}

/**
 * Words before a code that is its own opposite after half a turn repeats itself turned and inverted.
 *
 * @source derived: the inverting rotation changes the weight's parity, so m = P/2n is odd.
 */
export function selfOppositeLength(channels: number, positions: number): QuotientLength {
  const length = positions / (2 * channels);
  return length % 2 === 1 && length <= invertingRings(channels) ? length : null;
}

/** Whether a code with heads at equal steps can exist by parity and room; the search then decides. */
export function isFeasible(channels: number, positions: number, placement: Placement | undefined): boolean {
  const selfOpposite = selfOppositeLength(channels, positions) !== null;
  if (placement === 'half-turn') return selfOpposite;
  // An odd number of heads of a self-opposite code can also stand evenly: at every second site.
  const even = necklaceLength(channels, positions) !== null || (selfOpposite && channels % 2 === 1);
  return even || (placement === undefined && selfOpposite);
}

/** Fewest channels for a count, or `null` where no number of channels up to `MOST_SEARCHED_CHANNELS` serves. */
export function fewestChannels(positions: number, placement: Placement | undefined): number | null {
  for (let n = 1; n <= MOST_SEARCHED_CHANNELS; n++) if (isFeasible(n, positions, placement)) return n;
  return null;
}

/** The nearest counts below and above that can be had, with the given channels or with any. */
export function nearestCounts(
  positions: number,
  channels: number | undefined,
  placement: Placement | undefined,
): number[] {
  const { least, most } = POSITIONS_RANGE;
  const can = (count: number): boolean =>
    channels === undefined
      ? fewestChannels(count, placement) !== null
      : isFeasible(channels, count, placement);
  let below = positions - 1;
  while (below >= least && !can(below)) below -= 1;
  let above = positions + 1;
  while (above <= most && !can(above)) above += 1;
  return [below, above].filter((count) => count >= least && count <= most);
}
