import { cupsRefusal } from './refusals.ts';

/** Gaps between edges, sorted into bounces and real ones. */
export interface Bounce {
  /** Upper ends of the bins and how many gaps fell into each. [us], [-]; each bin is 1.26 times the one before */
  readonly histogram: readonly { readonly toUs: number; readonly gaps: number }[];
  /** Longest gap that belongs to a bounce; 0 when nothing bounces. [us] */
  readonly longestBounceUs: number;
  /** Shortest time that the contact really stays open or closed. [us] */
  readonly shortestRealUs: number;
  /** Quiet time to set: a contact counts only after this long without any edge. [us] */
  readonly quietUs: number;
  /** Most pulses a second that are then still counted. [Hz] */
  readonly mostHz: number;
  /** Share of all edges that were bounces. [-] */
  readonly bounceShare: number;
}

/** Bins are tenths of a decade. */
const BIN = 10 ** 0.1;
/** Bounces end and real gaps begin farther apart than this, or they cannot be told apart. [-]; own choice */
const LEAST_VALLEY = 3;
/** No reed bounces longer than this. [us]; measured reeds stay below 1 ms, common practice */
const LONGEST_BOUNCE_US = 8_000;
/** The quiet time is so much longer than the longest bounce gap seen. [-]; own choice */
const SAFETY = 2;
const SMALLEST_QUIET_US = 200;
const LEAST_EDGES = 40;
/** Edge times of a controller start again after 2^32. [us] */
const WRAP_US = 4_294_967_296;

/** Gaps between edges that follow each other, a wrapped clock taken on. [us] */
export function edgeGaps(timesUs: readonly number[]): number[] {
  return timesUs.slice(1).map((time, i) => (((time - timesUs[i]!) % WRAP_US) + WRAP_US) % WRAP_US);
}

/**
 * Bounce of the contact and the quiet time that hides it.
 *
 * @param timesUs - When each edge came, opening and closing alike. [us], n ≥ 40; may start again after 2^32
 * @throws `fit/too-few-edges`, `fit/bounce-not-apart`
 * @source fastest pulses with both edges watched: 1/(2 (bounce + quiet)), derived for half open, half closed.
 * @check src/core/fit/cups/cups.test.ts
 */
export function bounceOf(timesUs: readonly number[]): Bounce {
  const gaps = edgeGaps(timesUs).sort((a, b) => a - b);
  if (timesUs.length < LEAST_EDGES) {
    throw cupsRefusal('fit/too-few-edges', {
      what: 'Too few edges to tell bounces from pulses.',
      where: 'edges',
      got: `${timesUs.length} edges`,
      allowed: `${LEAST_EDGES} or more`,
      fix: 'Turn the cups by hand through 20 turns, some slow and some as fast as you can.',
    });
  }
  const split = valleyOf(gaps);
  const bounces = gaps.slice(0, split);
  const longestBounceUs = bounces.at(-1) ?? 0;
  const shortestRealUs = gaps[split]!;
  const quietUs = Math.max(SMALLEST_QUIET_US, Math.ceil((SAFETY * longestBounceUs) / 100) * 100);
  return {
    histogram: histogramOf(gaps),
    longestBounceUs,
    shortestRealUs,
    quietUs,
    mostHz: 1e6 / (2 * (longestBounceUs + quietUs)),
    bounceShare: bounces.length / gaps.length,
  };
}

/** Number of gaps that are bounces: below the widest jump between gaps that follow each other in length. */
function valleyOf(gaps: readonly number[]): number {
  if (gaps[0]! > LONGEST_BOUNCE_US) return 0;
  let best = { at: -1, ratio: 1 };
  for (let i = 1; i < gaps.length && gaps[i - 1]! <= LONGEST_BOUNCE_US; i++) {
    const ratio = gaps[i]! / Math.max(1, gaps[i - 1]!);
    if (ratio > best.ratio) best = { at: i, ratio };
  }
  if (best.at < 0 || best.ratio < LEAST_VALLEY) {
    throw cupsRefusal('fit/bounce-not-apart', {
      what: 'Bounces and real gaps run into each other, so that no quiet time parts them.',
      where: 'edges',
      got: `the widest jump between gaps is ${best.ratio.toFixed(1)} times`,
      allowed: `${LEAST_VALLEY} times or more`,
      fix: 'Turn the cups more slowly and record again; if it stays so, change the reed or put 100 nF across it.',
    });
  }
  return best.at;
}

function histogramOf(gaps: readonly number[]): Bounce['histogram'] {
  const bins = new Map<number, number>();
  for (const gap of gaps) {
    const bin = Math.ceil(Math.log(Math.max(1, gap)) / Math.log(BIN) - 1e-9);
    bins.set(bin, (bins.get(bin) ?? 0) + 1);
  }
  return [...bins].sort((a, b) => a[0] - b[0]).map(([bin, count]) => ({ toUs: BIN ** bin, gaps: count }));
}
