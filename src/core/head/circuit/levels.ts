import type { Board } from '../../boards/index.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import { gateThresholds, hasGates } from './gates.ts';
import { lagMs } from './lag.ts';
import { bestResistorOhm, recommendedResistorOhm } from './resistor.ts';
import { signalOf } from './signal.ts';
import { MULTIPLEXER, unsettledShare } from './settling.ts';
import { hysteresisCounts, switchLights, thresholdsBetween, thresholdSigmaCounts } from './thresholds.ts';

/**
 * Counts lit and dark, thresholds, margins and lag of a nominal channel.
 *
 * @check test/published/divider
 */
export function channelLevels(spec: HeadSpec, circuit: CircuitSpec, board: Board): Levels {
  const { detector } = spec;
  const resistorOhm = circuit.resistorOhm ?? recommendedResistorOhm(detector, board);
  const signal = signalOf(detector, resistorOhm, circuit.sensorTo, board);
  const litCounts = signal.counts(1, 1, 1);
  const darkCounts = signal.counts(0, 1, 1);
  const thresholds = hasGates(circuit)
    ? gateThresholds(circuit, signal.scaleCounts)
    : thresholdsBetween(litCounts, darkCounts, hysteresisCounts(circuit, signal.scaleCounts));
  const lights = switchLights(thresholds, signal, 1, 1);
  const { lowCounts, highCounts } = thresholds;
  const [litMarginCounts, darkMarginCounts] = signal.litIsHigh
    ? [litCounts - highCounts, lowCounts - darkCounts]
    : [lowCounts - litCounts, darkCounts - highCounts];
  const source = sourceOhm(detector, resistorOhm, circuit);
  const unsettled = hasGates(circuit) ? 0 : unsettledShare({ circuit, sourceOhm: source, board });
  const sigma = thresholdSigmaCounts({ circuit, board, levels: { unsettled, litCounts, darkCounts } });
  const lit = signal.drive(1);
  const dark = signal.drive(0);
  return {
    resistorOhm,
    bestResistorOhm: bestResistorOhm(detector, board),
    litCounts,
    darkCounts,
    ...thresholds,
    ...lights,
    litMarginCounts,
    darkMarginCounts,
    litMarginSigma: litMarginCounts / sigma,
    darkMarginSigma: darkMarginCounts / sigma,
    sourceOhm: source,
    unsettled,
    riseLagMs: lagMs({
      from: dark,
      to: lit,
      threshold: signal.drive(lights.risingLight),
      tauMs: detector.riseMs,
    }),
    fallLagMs: lagMs({
      from: lit,
      to: dark,
      threshold: signal.drive(lights.fallingLight),
      tauMs: detector.fallMs,
    }),
  };
}

/** Largest resistance behind the input: divider legs in parallel, a phototransistor's own being far larger, and a multiplexer's switch. [ohm] */
function sourceOhm(detector: HeadSpec['detector'], resistorOhm: number, { input }: CircuitSpec): number {
  const switchOhm = input === 'multiplexer' ? MULTIPLEXER.onOhm : 0;
  if (detector.kind !== 'photoresistor') return resistorOhm + switchOhm;
  return (detector.darkOhm * resistorOhm) / (detector.darkOhm + resistorOhm) + switchOhm;
}
