import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import { recommendedResistorOhm } from '../circuit/resistor.ts';
import { signalOf, type Signal } from '../circuit/signal.ts';
import { hasGates } from '../circuit/gates.ts';
import type { Findings } from './findings.ts';
import { gateFindings } from './gateChecks.ts';
import { leakageFindings } from './leakageChecks.ts';
import { powerFindings } from './powerChecks.ts';
import { settlingFindings } from './settlingChecks.ts';

/**
 * Ratios of dark to lit resistance that give a swing of a fifth and of a third of full scale with the best resistor.
 *
 * @source derived: k = ((1 + S)/(1 − S))²: S = 0.2 gives 2.25, S = 1/3 gives 4.
 * @check test/published/divider
 */
const CONTRAST = { fails: 2.25, weak: 4 } as const;
/** The same two swings, for detectors whose contrast is not a ratio of resistances. [share of full scale] */
const SWING = { fails: 0.2, weak: 1 / 3 } as const;
/** Parts this many standard deviations off must still be read. Common practice, no source. */
const PART_SIGMA = 2;

/** Everything about contrast, resistor, thresholds and the converter's input that is wrong or tight. */
export function circuitFindings(
  spec: HeadSpec,
  circuit: CircuitSpec,
  board: Board,
  levels: Levels,
): Findings {
  const signal = signalOf(spec.detector, levels.resistorOhm, circuit.sensorTo, board);
  const contrast = contrastFindings(spec);
  const swing = swingFindings(spec, board, levels, signal);
  const more = [
    leakageFindings(spec.detector, circuit, board, levels),
    gateFindings(spec, circuit, board, levels),
    settlingFindings(circuit, board, levels),
    powerFindings(board, levels),
  ];
  const isTold = swing.problems.length + contrast.problems.length > 0 || hasGates(circuit);
  const crossed = isTold ? [] : crossedThresholds(levels);
  return {
    problems: [
      ...contrast.problems,
      ...swing.problems,
      ...more.flatMap(({ problems }) => problems),
      ...crossed,
    ],
    warnings: [
      ...contrast.warnings,
      ...swing.warnings,
      ...more.flatMap(({ warnings }) => warnings),
      ...(hasGates(circuit) && circuit.input !== 'ladder' ? [] : sourceWarnings(board, levels)),
      ...(crossed.length > 0 || (circuit.thresholds === 'per-channel' && !hasGates(circuit))
        ? []
        : sharedWarnings(spec, circuit, levels, signal)),
    ],
  };
}

/** Too little between light and dark, by a little or by far: the same words whatever the sensor. */
function contrastFinding(
  isFailing: boolean,
  problem: Pick<Problem, 'where' | 'got' | 'allowed' | 'fix'>,
): Findings {
  if (isFailing) {
    const what = 'Window and land look too much alike to the sensor.';
    return { problems: [{ code: 'head/no-contrast', what, ...problem }], warnings: [] };
  }
  const what = 'Window and land differ little to the sensor.';
  return { problems: [], warnings: [{ code: 'head/weak-contrast', what, ...problem }] };
}

function contrastFindings({ detector }: HeadSpec): Findings {
  if (detector.kind !== 'photoresistor') return { problems: [], warnings: [] };
  const ratio = detector.darkOhm / detector.litOhm;
  if (ratio >= CONTRAST.weak) return { problems: [], warnings: [] };
  const problem = {
    where: 'head.detector.darkOhm',
    got: `${showNumber(detector.darkOhm, 0)} ohm dark over ${showNumber(detector.litOhm, 0)} ohm lit, a ratio of ${showNumber(ratio, 2)}`,
    allowed: `a ratio of ${CONTRAST.fails} at least, ${CONTRAST.weak} or more to be safe`,
    fix: `Shut out stray light or use denser material until the dark resistance is ${showNumber(CONTRAST.weak * detector.litOhm, 0)} ohm or more.`,
  };
  return contrastFinding(ratio < CONTRAST.fails, problem);
}

function swingFindings(spec: HeadSpec, board: Board, levels: Levels, signal: Signal): Findings {
  const swing = Math.abs(levels.litCounts - levels.darkCounts) / signal.scaleCounts;
  // A poor photoresistor is named by its own ratio; the resistor is at fault only when a better one would do.
  const better = recommendedResistorOhm(spec.detector, board);
  const reachable = signalOf(spec.detector, better, 'supply', board);
  const best = (reachable.counts(1, 1, 1) - reachable.counts(0, 1, 1)) / reachable.scaleCounts;
  if (swing >= SWING.weak) return { problems: [], warnings: [] };
  const found = {
    got: `a swing of ${showNumber(100 * swing, 1)} % of full scale with ${showNumber(levels.resistorOhm, 0)} ohm`,
    allowed: `${100 * SWING.fails} % at least, ${showNumber(100 * SWING.weak, 0)} % or more to be safe`,
  };
  if (best >= SWING.fails && swing < 0.95 * best) {
    const problem = {
      what: 'The fixed resistor leaves too little between lit and dark counts.',
      where: 'circuit.resistorOhm',
      ...found,
      fix: `Set circuit.resistorOhm to ${better} (ohm), which gives ${showNumber(100 * best, 1)} %.`,
    };
    return swing < SWING.fails
      ? { problems: [{ code: 'head/resistor-unfit', ...problem }], warnings: [] }
      : { problems: [], warnings: [{ code: 'head/resistor-poor', ...problem }] };
  }
  if (spec.detector.kind === 'photoresistor' || spec.detector.kind === 'colour-sensor')
    return { problems: [], warnings: [] };
  const problem = {
    where: 'head.detector.darkMa',
    ...found,
    fix: `Shut out stray light until the dark current is ${showNumber(spec.detector.litMa / 10, 3)} mA or less.`,
  };
  return contrastFinding(swing < SWING.fails, problem);
}

function crossedThresholds({
  litMarginCounts,
  darkMarginCounts,
  lowCounts,
  highCounts,
  litCounts,
  darkCounts,
}: Levels): Problem[] {
  if (litMarginCounts > 0 && darkMarginCounts > 0) return [];
  const swing = Math.abs(litCounts - darkCounts);
  return [
    {
      code: 'head/thresholds-crossed',
      what: 'The two thresholds stand farther apart than lit and dark, so no channel would ever change.',
      where: 'circuit.hysteresisCounts',
      got: `${showNumber(highCounts - lowCounts, 1)} counts between thresholds, ${showNumber(swing, 1)} counts between lit and dark`,
      allowed: `less than ${showNumber(swing, 1)} counts; a quarter of that leaves good margins`,
      fix: `Set circuit.hysteresisCounts to ${Math.max(1, Math.floor(swing / 4))}, or make the conversions quieter.`,
    },
  ];
}

function sourceWarnings(board: Board, { sourceOhm, resistorOhm }: Levels): Problem[] {
  if (sourceOhm <= board.maxSourceOhm) return [];
  return [
    {
      code: 'head/source-resistance',
      what: 'The converter looks into a large resistance, so the first reading after a change of channel is stale.',
      where: 'circuit.resistorOhm',
      got: `${showNumber(sourceOhm, 0)} ohm at the input with ${showNumber(resistorOhm, 0)} ohm fixed`,
      allowed: `${board.maxSourceOhm} ohm (data sheet of the ${board.chip})`,
      fix: 'Nothing needs doing: the program reads each channel twice and drops the first. Sensors of less resistance need only one read.',
    },
  ];
}

/** With one pair of thresholds for all, a strong and a weak part must both lie outside it. */
function sharedWarnings(
  { detector }: HeadSpec,
  circuit: CircuitSpec,
  levels: Levels,
  signal: Signal,
): Problem[] {
  const factor = 1 + PART_SIGMA * detector.spread;
  const lit = [factor, 1 / factor].map((part) => signal.counts(1, part, 1));
  const dark = [factor, 1 / factor].map((part) => signal.counts(0, part, 1));
  const { lowCounts, highCounts, litCounts, darkCounts } = levels;
  const reads =
    litCounts > darkCounts
      ? Math.min(...lit) > highCounts && Math.max(...dark) < lowCounts
      : Math.max(...lit) < lowCounts && Math.min(...dark) > highCounts;
  if (reads) return [];
  return [
    {
      code: 'head/parts-too-unequal',
      what: 'With one pair of thresholds for all channels, some sensors as sold would never change.',
      where: hasGates(circuit) ? 'circuit.input' : 'circuit.thresholds',
      got: `${hasGates(circuit) ? 'gates of one kind' : 'shared thresholds'} with parts that differ by ${showNumber(100 * detector.spread, 0)} % (one standard deviation)`,
      allowed: 'parts alike enough to lie outside the thresholds at two standard deviations',
      fix: hasGates(circuit)
        ? 'Set circuit.input to direct or multiplexer, or sort the sensors by a meter before building.'
        : 'Set circuit.thresholds to per-channel, or sort the sensors by a meter before building.',
    },
  ];
}
