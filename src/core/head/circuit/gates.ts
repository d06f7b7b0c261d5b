import type { CircuitInput, CircuitSpec } from '../headSpec.ts';

/** What turns the voltage of a divider into on and off before the controller sees it. */
export type Gate = 'comparator' | 'schmitt';

/** The two thresholds of a gate, the lower first. [counts] */
interface GateThresholds {
  readonly lowCounts: number;
  readonly highCounts: number;
}

/** True where a gate stands behind each sensor, so that the controller only sees on and off. */
export function hasGates({ input }: { readonly input: CircuitInput }): boolean {
  return input === 'digital' || input === 'shift-register' || input === 'ladder';
}

/** Which gate stands behind each sensor. */
export function gateOf({ gate = 'comparator' }: Pick<CircuitSpec, 'gate'>): Gate {
  return gate;
}

/** Resistor before a comparator's input, that its hysteresis is fed back to. [ohm] */
export const GATE_OHM = 10_000;

/** Hysteresis of a comparator where none is asked for: 10 kohm before the input and 470 kohm back. [share of supply] */
const COMPARATOR_HYSTERESIS = 10 / 480;

/**
 * Thresholds of a Schmitt inverter going up and down, and half of what its sheet leaves open for each. [share of supply]
 *
 * Values from memory of the 74HC14 class at 4.5 V: 1.7 to 3.15 V going up, 2.4 V typical; 0.9 to 2.0 V going down, 1.4 V
 * typical. Chips of other families differ: the sheet of yours decides.
 */
const SCHMITT = { up: 0.53, down: 0.31, halfRange: 0.16 } as const;

/** Half of what a comparator's sheet leaves open of its offset. Value from memory of the usual dual comparator. [V] */
const OFFSET_V = 0.005;

/** How far apart a gate's thresholds lie. [counts] */
export function gateHysteresisCounts(circuit: CircuitSpec, scaleCounts: number): number {
  if (gateOf(circuit) === 'schmitt') return (SCHMITT.up - SCHMITT.down) * scaleCounts;
  return circuit.hysteresisCounts ?? COMPARATOR_HYSTERESIS * scaleCounts;
}

/**
 * Thresholds of a gate: a comparator's lie about half the supply, a Schmitt inverter's where its sheet says. [counts]
 *
 * @param scaleCounts - Counts that the whole supply would read, so that gates and converters compare. [counts]
 */
export function gateThresholds(circuit: CircuitSpec, scaleCounts: number): GateThresholds {
  if (gateOf(circuit) === 'schmitt')
    return { lowCounts: SCHMITT.down * scaleCounts, highCounts: SCHMITT.up * scaleCounts };
  const half = gateHysteresisCounts(circuit, scaleCounts) / 2;
  return { lowCounts: scaleCounts / 2 - half, highCounts: scaleCounts / 2 + half };
}

/**
 * Standard deviation of both thresholds of a gate together, noise included. [counts]
 *
 * @source derived: half the range of a sheet is taken as two standard deviations; a reference from two resistors of
 * tolerance t is off by t/2√2 of half the supply, as two standard deviations.
 */
export function gateSigmaCounts(circuit: CircuitSpec, scaleCounts: number, supplyV: number): number {
  const { noiseCounts, resistorTolerancePercent } = circuit;
  if (gateOf(circuit) === 'schmitt') return Math.hypot(noiseCounts, (SCHMITT.halfRange / 2) * scaleCounts);
  const offset = (OFFSET_V / supplyV / 2) * scaleCounts;
  const reference = (resistorTolerancePercent / 100 / 2 / (2 * Math.SQRT2)) * scaleCounts;
  return Math.hypot(noiseCounts, offset, reference);
}

/**
 * Resistor from a comparator's output back to its input that gives a hysteresis. [ohm]
 *
 * @source derived: the output swings over the supply, so that the width is G/(G + F) of it, G before the input.
 */
export function feedbackOhm(circuit: CircuitSpec, scaleCounts: number): number {
  return GATE_OHM * (scaleCounts / Math.max(1, gateHysteresisCounts(circuit, scaleCounts)) - 1);
}
