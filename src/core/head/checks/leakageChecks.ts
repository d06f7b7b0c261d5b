import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber, showSignificant } from '../../units/index.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, Detector } from '../headSpec.ts';
import { hasGates } from '../circuit/gates.ts';
import type { Findings } from './findings.ts';

/** Share of the swing that the leakage of an input may take. Common practice, no source. [-] */
const SHARE = { weak: 0.05, fails: 0.25 } as const;

/**
 * A pin leaks a little, and through a large resistance that little moves the voltage as light does.
 *
 * @source derived: the leakage I through the source resistance R moves the input by I R, to be held against the swing.
 * @check src/core/head/checks/leakageChecks.test.ts
 */
export function leakageFindings(
  detector: Detector,
  circuit: Pick<CircuitSpec, 'input'>,
  board: Board,
  levels: Levels,
): Findings {
  if (hasGates(circuit)) return { problems: [], warnings: [] };
  const { litCounts, darkCounts, sourceOhm } = levels;
  const swingV = (Math.abs(litCounts - darkCounts) / 2 ** board.converterBits) * board.supplyV;
  const share = (board.inputLeakageUa * 1e-6 * sourceOhm) / swingV;
  if (!(share > SHARE.weak)) return { problems: [], warnings: [] };
  const most = (SHARE.weak * swingV) / (board.inputLeakageUa * 1e-6);
  const fails = share > SHARE.fails;
  const problem: Problem = {
    code: fails ? 'head/leakage-hides-light' : 'head/leakage',
    what: `The leakage of an input through so large a resistance moves the counts ${fails ? 'as much as the light may' : 'noticeably'}.`,
    where: detector.kind === 'photoresistor' ? 'head.detector.darkOhm' : 'head.detector.litMa',
    got: `${showSignificant(sourceOhm, 2)} ohm at the input, where ${showNumber(board.inputLeakageUa, 3)} uA leaks: ${showSignificant(100 * share, 2)} % of the swing`,
    allowed: `${100 * SHARE.weak} % of the swing at most, ${showSignificant(most, 2)} ohm`,
    fix: fixText(detector, board),
  };
  return fails ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}

function fixText(detector: Detector, { inputLeakageUa }: Board): string {
  if (detector.kind === 'photoresistor')
    return 'Bring more light to the sensors, or choose ones of less resistance, and leave circuit.resistorOhm null.';
  // Current through the resistor against leakage through the same: twice the share leaves room for dark current and spread.
  const ma = (2 * inputLeakageUa) / SHARE.weak / 1000;
  return `Bring light and sensor nearer until head.detector.litMa is ${showSignificant(ma, 2)} (mA) or more, and leave circuit.resistorOhm null.`;
}
