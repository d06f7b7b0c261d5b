import { gateOf, hasGates, type HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { markFacts, type MarkFacts } from './markFacts.ts';
import { wholeThresholds } from './wholeThresholds.ts';

/** One channel as the program reads it. */
export interface ChannelFacts {
  /** It turns low at or below `low`, high at or above `high`. [counts] */
  readonly low: number;
  readonly high: number;
  /** Level of the code that it shows while it reads high counts. */
  readonly levelWhenHigh: 0 | 1;
  /** What interpolation inside a step needs; `null` where nothing is known of the channel's edges. */
  readonly edge: EdgeFacts | null;
}

/** The soft edge of a channel. */
export interface EdgeFacts {
  readonly darkCounts: number;
  readonly litCounts: number;
  /** Place across the edge at equally spaced counts from dark to lit, in thousandths. [0.001], rising */
  readonly curve: readonly number[];
  /** Turn from dark to lit, in hundredths. [0.01 deg] */
  readonly widthHundredths: number;
  /** Place where the channel switches, the middle of its two thresholds, in thousandths. [0.001] */
  readonly switchPlace: number;
}

/** Points that every curve is brought to, so that one table holds all channels. [-] */
export const CURVE_POINTS = 9;

/** Most points of a curve that the fit may give go through here; between them it is straight. */
function curveAt(curve: readonly number[], share: number): number {
  const at = Math.min(Math.max(share, 0), 1) * (curve.length - 1);
  const i = Math.min(Math.floor(at), curve.length - 2);
  return curve[i]! + (curve[i + 1]! - curve[i]!) * (at - i);
}

/**
 * What the light of a channel changes when it is pulsed, in place of what it reads: with the sensor to the supply the
 * counts rise from 0, with the sensor to ground they fall from full scale, and either change is called high. [counts]
 */
function pulsedThresholds({ levels, circuit, board }: HeadPlan): { low: number; high: number } {
  if (circuit.sensorTo === 'supply') return wholeThresholds(levels);
  const full = 2 ** board.converterBits - 1;
  return wholeThresholds({ lowCounts: full - levels.highCounts, highCounts: full - levels.lowCounts });
}

/** Three marks: the pair between the lower two, or the light below which no colour is judged. */
function markChannel(marks: MarkFacts): ChannelFacts {
  const pair = marks.kind === 'greys' ? marks.pairs[0] : { low: 0, high: marks.leastSum };
  return { ...pair, levelWhenHigh: 1, edge: null };
}

function drawnChannel(head: HeadPlan): ChannelFacts {
  const marks = markFacts(head);
  if (marks) return markChannel(marks);
  const { levels, circuit, disc } = head;
  const { windowLevel } = disc.spec;
  const other = windowLevel === 1 ? 0 : 1;
  if (hasGates(circuit)) {
    // A Schmitt inverter turns its input round; pulsed lights are told by the change alone.
    const isTurned = gateOf(circuit) === 'schmitt';
    const lightIsHigh = circuit.emitters === 'pulsed' || (circuit.sensorTo === 'supply') !== isTurned;
    return { low: 0, high: 1, levelWhenHigh: lightIsHigh ? windowLevel : other, edge: null };
  }
  if (circuit.emitters === 'pulsed') {
    return { ...pulsedThresholds(head), levelWhenHigh: windowLevel, edge: null };
  }
  const levelWhenHigh = circuit.sensorTo === 'supply' ? windowLevel : other;
  return { ...wholeThresholds(levels), levelWhenHigh, edge: null };
}

function builtEdge(channel: NonNullable<Instrument['asBuilt']>['channels'][number]): EdgeFacts | null {
  const { edgeCurve, edgeWidthDeg, darkCounts, litCounts, lowCounts, highCounts } = channel;
  if (edgeCurve === null || edgeWidthDeg === null) return null;
  const middle = ((lowCounts + highCounts) / 2 - darkCounts) / (litCounts - darkCounts);
  return {
    darkCounts: Math.round(darkCounts),
    litCounts: Math.round(litCounts),
    curve: Array.from({ length: CURVE_POINTS }, (_, i) =>
      Math.round(1000 * curveAt(edgeCurve, i / (CURVE_POINTS - 1))),
    ),
    widthHundredths: Math.round(edgeWidthDeg * 100),
    switchPlace: Math.round(1000 * curveAt(edgeCurve, middle)),
  };
}

/** Every channel of the code: as it was found, or as it is drawn. */
export function channelFacts({ asBuilt }: Instrument, head: HeadPlan): ChannelFacts[] {
  const { windowLevel } = head.disc.spec;
  if (!asBuilt) return head.disc.code.channels.map(() => drawnChannel(head));
  return asBuilt.channels.map((channel) => ({
    low: channel.lowCounts,
    high: channel.highCounts,
    levelWhenHigh: channel.litIsHigh ? windowLevel : windowLevel === 1 ? 0 : 1,
    edge: builtEdge(channel),
  }));
}
