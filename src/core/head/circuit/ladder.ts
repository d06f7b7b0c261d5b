import type { Board } from '../../boards/index.ts';
import type { CircuitSpec, LadderSpec } from '../headSpec.ts';
import { nearestE24 } from './resistor.ts';
import { conversionSigmaCounts } from './thresholds.ts';

/** A ladder until the maker says otherwise. Value from memory: 100 ppm/K is the usual metal film. */
export const LADDER_DEFAULT: LadderSpec = {
  kind: 'r-2r',
  smallestOhm: 10_000,
  tolerancePercent: 1,
  ppmPerK: 100,
};

/** Most channels on one wire: beyond it words lie closer than any converter here tells apart. [-] */
export const LADDER_CHANNELS_MOST = 8;

/** Resistance of a logic gate's output, behind which every leg stands. Value from memory of the 74HC class. [ohm] */
const GATE_OUTPUT_OHM = 50;

/** Distance of a level from the middle between two, in standard deviations of a conversion. Common practice, no source. */
const APART_SIGMA = 3;

/** One resistor of the ladder. */
export interface LadderResistor {
  /** `leg 0` belongs to channel 0; `rung 0` joins the nodes of channels 0 and 1; `end` goes to ground. */
  readonly place: string;
  readonly ohm: number;
}

/** All channels on one wire, and how far apart their words read. */
export interface LadderPlan {
  readonly kind: LadderSpec['kind'];
  readonly resistors: readonly LadderResistor[];
  /** What the converter reads for each word, channel 0 the lowest bit. [counts], n = 2^channels */
  readonly levels: readonly number[];
  /** Words in the order of their counts. n = 2^channels */
  readonly order: readonly number[];
  /** Smallest gap between two words with resistors as printed. [counts] */
  readonly gapCounts: number;
  /** The same with every resistor at the end of its tolerance and temperature that makes it smallest. [counts] */
  readonly worstGapCounts: number;
  /** Gap that the converter needs to tell two words apart. [counts] */
  readonly neededCounts: number;
  /** Resistance that the converter looks into. [ohm] */
  readonly sourceOhm: number;
}

/** Resistors of a ladder, E24 values as sold. */
export function ladderResistors({ kind, smallestOhm }: LadderSpec, channels: number): LadderResistor[] {
  if (kind === 'weighted') {
    return Array.from({ length: channels }, (_, c) => ({
      place: `leg ${c}`,
      ohm: nearestE24(smallestOhm * 2 ** (channels - 1 - c)),
    }));
  }
  const twice = nearestE24(2 * smallestOhm);
  return [
    ...Array.from({ length: channels }, (_, c) => ({ place: `leg ${c}`, ohm: twice })),
    ...Array.from({ length: channels - 1 }, (_, c) => ({ place: `rung ${c}`, ohm: nearestE24(smallestOhm) })),
    { place: 'end', ohm: twice },
  ];
}

/**
 * What each leg alone adds to the output, as a share of the supply, and the resistance of the output.
 *
 * @param ohms - Resistors in the order of `ladderResistors`. [ohm]
 * @source derived; superposition, and one source with its resistance taken node by node (Thévenin).
 * @check src/core/head/circuit/ladder.test.ts (nodes solved by elimination)
 */
export function ladderWeights(
  kind: LadderSpec['kind'],
  ohms: readonly number[],
  channels: number,
): { readonly weights: readonly number[]; readonly sourceOhm: number } {
  const legs = ohms.slice(0, channels).map((ohm) => ohm + GATE_OUTPUT_OHM);
  if (kind === 'weighted') {
    const all = legs.reduce((sum, ohm) => sum + 1 / ohm, 0);
    return { weights: legs.map((ohm) => 1 / ohm / all), sourceOhm: 1 / all };
  }
  const weights = new Array<number>(channels).fill(0);
  let seen = ohms.at(-1)!;
  for (const [c, leg] of legs.entries()) {
    if (c > 0) seen += ohms[channels + c - 1]!;
    const kept = leg / (leg + seen);
    for (let before = 0; before < c; before++) weights[before]! *= kept;
    weights[c] = seen / (leg + seen);
    seen = (leg * seen) / (leg + seen);
  }
  return { weights, sourceOhm: seen };
}

/** What the converter reads for a word, up to where it follows. [counts] */
function levelOf(weights: readonly number[], word: number, board: Board): number {
  let share = 0;
  for (const [c, weight] of weights.entries()) if ((word >> c) & 1) share += weight;
  return 2 ** board.converterBits * Math.min(share, board.converterTopShare);
}

/**
 * All channels on one wire: gates drive a ladder of resistors, and one converter pin reads the whole word at once.
 *
 * @param kelvin - Farthest that the ladder gets from the temperature it was built at. [K]
 * @source derived: the worst gap is the printed one less each resistor's own share of it, first order in its tolerance.
 * @check src/core/head/circuit/ladder.test.ts (every resistor at each end of its tolerance)
 */
export function ladderPlan(circuit: CircuitSpec, board: Board, channels: number, kelvin: number): LadderPlan {
  const spec = circuit.ladder ?? LADDER_DEFAULT;
  const resistors = ladderResistors(spec, channels);
  const ohms = resistors.map(({ ohm }) => ohm);
  const { weights, sourceOhm } = ladderWeights(spec.kind, ohms, channels);
  const levels = Array.from({ length: 2 ** channels }, (_, word) => levelOf(weights, word, board));
  const order = levels.map((_, word) => word).sort((a, b) => levels[a]! - levels[b]! || a - b);
  const share = spec.tolerancePercent / 100 + spec.ppmPerK * 1e-6 * kelvin;
  const moved = ohms.map((_, r) => {
    const changed = ohms.map((ohm, other) => (other === r ? ohm * (1 + NUDGE) : ohm));
    return ladderWeights(spec.kind, changed, channels).weights;
  });
  const slope = (word: number, r: number): number =>
    (levelOf(moved[r]!, word, board) - levels[word]!) / NUDGE;
  const gaps = order.slice(1).map((word, i) => {
    const before = order[i]!;
    const gap = levels[word]! - levels[before]!;
    const lost = ohms.reduce((sum, _, r) => sum + Math.abs(slope(word, r) - slope(before, r)), 0) * share;
    return { gap, worst: gap - lost };
  });
  return {
    kind: spec.kind,
    resistors,
    levels,
    order,
    gapCounts: Math.min(...gaps.map(({ gap }) => gap)),
    worstGapCounts: Math.min(...gaps.map(({ worst }) => worst)),
    neededCounts: 2 * (board.converterErrorCounts + APART_SIGMA * conversionSigmaCounts(circuit)),
    sourceOhm,
  };
}

/** Share by which a resistor is changed to see what it does. [-] */
const NUDGE = 1e-6;

/** True where every word can be told from every other. */
export function tellsWordsApart({ worstGapCounts, neededCounts }: LadderPlan): boolean {
  return worstGapCounts >= neededCounts;
}

/**
 * The word that a program reads for each word that the gates give, in a ladder whose resistors differ from the printed ones.
 *
 * A program takes the word whose printed counts are nearest.
 *
 * @param factors - Factor on each resistor in the order of `LadderPlan.resistors`. [-]
 * @returns Word read, by word given; channel 0 the lowest bit. n = 2^channels
 */
export function ladderReadsAs(
  { kind, resistors, levels, order }: LadderPlan,
  board: Board,
  factors: readonly number[],
): Int32Array {
  const channels = Math.log2(levels.length);
  const ohms = resistors.map(({ ohm }, r) => ohm * (factors[r] ?? 1));
  const { weights } = ladderWeights(kind, ohms, channels);
  const sorted = order.map((word) => levels[word]!);
  return Int32Array.from(levels, (_, word) => order[nearest(sorted, levelOf(weights, word, board))]!);
}

/** Index of the nearest of ascending values. */
function nearest(sorted: readonly number[], value: number): number {
  let [low, high] = [0, sorted.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]! + sorted[middle + 1]!) / 2 < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
