import type { Board } from '../../boards/index.ts';
import type { CircuitSpec } from '../headSpec.ts';
import { gateSigmaCounts, hasGates } from './gates.ts';
import type { Signal } from './signal.ts';

/** Distance of thresholds that noise must not cross, in standard deviations of one conversion. Common practice, no source. */
const HYSTERESIS_SIGMA = 6;
/** Least distance of thresholds as a share of full scale. Common practice, no source. */
const HYSTERESIS_SHARE = 0.03;
/** A whole count hides an even error one count wide: its standard deviation is 1/√12. [counts] */
const QUANTISATION_COUNTS = 1 / Math.sqrt(12);

/** Standard deviation of one conversion with its rounding to whole counts. [counts] */
export function conversionSigmaCounts(circuit: CircuitSpec): number {
  return Math.hypot(circuit.noiseCounts, QUANTISATION_COUNTS);
}

/** Standard deviation of both thresholds of a channel on the build: of its gate, or of a conversion not quite settled. [counts] */
export function thresholdSigmaCounts({
  circuit,
  board,
  levels,
}: {
  readonly circuit: CircuitSpec;
  readonly board: Board;
  readonly levels: { readonly unsettled: number; readonly litCounts: number; readonly darkCounts: number };
}): number {
  if (hasGates(circuit)) return gateSigmaCounts(circuit, 2 ** board.converterBits, board.supplyV);
  // What is left of the channel before pulls one way or the other, at most by all of it.
  const pull = (levels.unsettled * Math.abs(levels.litCounts - levels.darkCounts)) / 2;
  return Math.hypot(conversionSigmaCounts(circuit), pull);
}

/** Distance of the two thresholds: the one asked for, or six standard deviations and 3 % of scale at least. [counts] */
export function hysteresisCounts(circuit: CircuitSpec, scaleCounts: number): number {
  return (
    circuit.hysteresisCounts ??
    Math.max(HYSTERESIS_SIGMA * conversionSigmaCounts(circuit), HYSTERESIS_SHARE * scaleCounts)
  );
}

/** The light at which a channel changes. */
export interface SwitchLights {
  /** Light at which a channel going light is called lit. [-] */
  readonly risingLight: number;
  /** Light at which a channel going dark is called dark. [-] */
  readonly fallingLight: number;
}

/** Two thresholds, the lower first. */
export interface Thresholds {
  readonly lowCounts: number;
  readonly highCounts: number;
}

/** Thresholds halfway between lit and dark, set apart by the hysteresis. [counts] */
export function thresholdsBetween(lit: number, dark: number, hysteresis: number): Thresholds {
  const middle = (lit + dark) / 2;
  return { lowCounts: middle - hysteresis / 2, highCounts: middle + hysteresis / 2 };
}

/**
 * Light at which a part behind a resistor crosses each threshold.
 *
 * With the sensor to ground, light means low counts, so the lower threshold is the one that says lit.
 *
 * @param thresholds - The two thresholds. [counts]
 * @param part - Factor on the detector, 1 = nominal. [-]
 * @param resistor - Factor on the fixed resistor, 1 = nominal. [-]
 */
export function switchLights(
  thresholds: Thresholds,
  signal: Signal,
  part: number,
  resistor: number,
): SwitchLights {
  const { lowCounts, highCounts } = thresholds;
  return {
    risingLight: signal.light(signal.litIsHigh ? highCounts : lowCounts, part, resistor),
    fallingLight: signal.light(signal.litIsHigh ? lowCounts : highCounts, part, resistor),
  };
}
