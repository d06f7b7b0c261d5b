import type { Board } from '../../boards/index.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import { lagMs } from './lag.ts';
import { bestResistorOhm, recommendedResistorOhm } from './resistor.ts';
import { signalOf } from './signal.ts';
import { conversionSigmaCounts, hysteresisCounts, switchLights, thresholdsBetween } from './thresholds.ts';

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
  const thresholds = thresholdsBetween(litCounts, darkCounts, hysteresisCounts(circuit, signal.scaleCounts));
  const lights = switchLights(thresholds, signal, 1, 1);
  const { lowCounts, highCounts } = thresholds;
  const [litMarginCounts, darkMarginCounts] = signal.litIsHigh
    ? [litCounts - highCounts, lowCounts - darkCounts]
    : [lowCounts - litCounts, darkCounts - highCounts];
  const sigma = conversionSigmaCounts(circuit);
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
    sourceOhm: sourceOhm(detector, resistorOhm),
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

/** Largest resistance the converter looks into: divider legs in parallel; a phototransistor's own leg is far larger. [ohm] */
function sourceOhm(detector: HeadSpec['detector'], resistorOhm: number): number {
  if (detector.kind !== 'photoresistor') return resistorOhm;
  return (detector.darkOhm * resistorOhm) / (detector.darkOhm + resistorOhm);
}
