import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber, showSignificant } from '../../units/index.ts';
import { hasGates } from '../circuit/gates.ts';
import { unsettledShare } from '../circuit/settling.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec } from '../headSpec.ts';
import type { Findings } from './findings.ts';

/** What is left of the channel before may be half a count, which rounding hides. [counts] */
const HIDDEN_COUNTS = 0.5;

/** A large resistance charges the converter's input too slowly, so that a channel reads a little of the one before. */
export function settlingFindings(circuit: CircuitSpec, board: Board, levels: Levels): Findings {
  const { unsettled, litCounts, darkCounts, sourceOhm, litMarginCounts, darkMarginCounts } = levels;
  const swing = Math.abs(litCounts - darkCounts);
  const left = unsettled * swing;
  if (hasGates(circuit) || left <= HIDDEN_COUNTS) return { problems: [], warnings: [] };
  const fails = left >= Math.min(litMarginCounts, darkMarginCounts);
  const problem: Problem = {
    code: fails ? 'head/never-settles' : 'head/settles-late',
    what: fails
      ? 'The converter never sees what a sensor says: its input is still charged by the channel before.'
      : 'The converter measures before its input has settled, so that a channel reads a little of the one before.',
    where: 'circuit.resistorOhm',
    got: `${showSignificant(sourceOhm, 2)} ohm at the input, which leaves ${showNumber(left, 1)} counts of the channel before`,
    allowed: `${HIDDEN_COUNTS} counts, or ${showSignificant(settledOhm(circuit, board, swing), 2)} ohm`,
    fix: 'Bring more light to the sensors or choose ones of less resistance, and leave circuit.resistorOhm null; or put 100 nF from each sensor to ground where it turns slowly enough.',
  };
  return fails ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}

/** Largest resistance that leaves half a count at most, by halving. [ohm] */
function settledOhm(circuit: CircuitSpec, board: Board, swing: number): number {
  let [low, high] = [1, 1e9];
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    if (unsettledShare({ circuit, sourceOhm: middle, board }) * swing > HIDDEN_COUNTS) high = middle;
    else low = middle;
  }
  return low;
}
