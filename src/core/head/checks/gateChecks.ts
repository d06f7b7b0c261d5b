import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber } from '../../units/index.ts';
import { gateOf, hasGates } from '../circuit/gates.ts';
import { nearestE24, recommendedResistorOhm } from '../circuit/resistor.ts';
import { signalOf } from '../circuit/signal.ts';
import { thresholdSigmaCounts } from '../circuit/thresholds.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import type { Findings } from './findings.ts';

/** Gates this many standard deviations off must still switch. Common practice, no source. */
const GATE_SIGMA = 2;

/** A gate's thresholds stand where its sheet has them, and lit and dark must lie on either side, whichever gate is bought. */
export function gateFindings(spec: HeadSpec, circuit: CircuitSpec, board: Board, levels: Levels): Findings {
  if (!hasGates(circuit)) return { problems: [], warnings: [] };
  const sigma = GATE_SIGMA * thresholdSigmaCounts({ circuit, board, levels });
  const margin = Math.min(levels.litMarginCounts, levels.darkMarginCounts);
  if (margin > sigma) return { problems: [], warnings: [] };
  const scale = 2 ** board.converterBits;
  const volts = (counts: number): string => `${showNumber((counts / scale) * board.supplyV, 2)} V`;
  const [low, high] = [levels.lowCounts - sigma, levels.highCounts + sigma];
  const problem: Problem = {
    code: margin <= 0 ? 'head/gate-never-switches' : 'head/gate-may-not-switch',
    what:
      margin <= 0
        ? 'A gate behind the sensors never switches: lit and dark do not lie on either side of its thresholds.'
        : 'Some gates as sold would not switch: lit or dark lies too near to their thresholds.',
    where: gateOf(circuit) === 'schmitt' ? 'circuit.gate' : 'circuit.resistorOhm',
    got: `lit ${volts(levels.litCounts)}, dark ${volts(levels.darkCounts)}`,
    allowed: `one below ${volts(low)}, the other above ${volts(high)}`,
    fix: gateFix(spec, circuit, board, { low, high }),
  };
  return margin <= 0 ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}

/** A resistor that puts lit and dark on either side, or the gate or input that does without. */
function gateFix(
  { detector }: HeadSpec,
  circuit: CircuitSpec,
  board: Board,
  { low, high }: { readonly low: number; readonly high: number },
): string {
  const best = recommendedResistorOhm(detector, board);
  const works = [1, 1.5, 0.67, 2, 0.5, 3, 0.33]
    .map((factor) => nearestE24(best * factor))
    .find((ohm) => {
      const signal = signalOf(detector, ohm, circuit.sensorTo, board);
      const [lit, dark] = [signal.counts(1, 1, 1), signal.counts(0, 1, 1)];
      return Math.min(lit, dark) < low && Math.max(lit, dark) > high;
    });
  if (works !== undefined) return `Set circuit.resistorOhm to ${works} (ohm).`;
  if (gateOf(circuit) === 'schmitt')
    return 'Set circuit.gate to comparator, whose thresholds lie close about half the supply.';
  return 'Set circuit.input to direct or multiplexer, which measure and find the middle by themselves.';
}
