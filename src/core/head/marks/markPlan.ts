import type { Board } from '../../boards/index.ts';
import {
  conversionSigmaCounts,
  hysteresisCounts,
  thresholdsBetween,
  type Thresholds,
} from '../circuit/thresholds.ts';
import { signalOf } from '../circuit/signal.ts';
import type { CircuitSpec, Detector, Rgb } from '../headSpec.ts';
import { chromaticityOf, colourReader, type Chromaticity, type ColourRule } from './colourReader.ts';
import { greyReader } from './greyReader.ts';
import type { MarkReader } from './markReader.ts';

/** How a head tells three marks apart, in the numbers a program needs. */
export type MarkPlan =
  | {
      readonly kind: 'greys';
      /** Counts over level 0, 1 and 2. [counts], n = 3 */
      readonly counts: readonly number[];
      /** Thresholds between level 0 and 1, and between 1 and 2. [counts], n = 2 */
      readonly thresholds: readonly [Thresholds, Thresholds];
    }
  | ({
      readonly kind: 'colours';
      /** Counts over level 0, 1 and 2. n = 3 */
      readonly marksRgbCounts: readonly [Rgb, Rgb, Rgb];
      /** How far off a reading of the nearest pair of colours may be and still count, in standard deviations of a reading. [sigma] */
      readonly marginSigma: number;
    } & ColourRule);

/** What one build's channel differs in; nothing where left out. */
export interface MarkVariation {
  /** Factor on the sensor. [-] */
  readonly part: number;
  /** Factor on the fixed resistor. [-] */
  readonly resistor: number;
  /** Factors on red, green and blue, from lights that differ. [-], n = 3 */
  readonly colours: Rgb;
  /** Factors on red, green and blue since the marks were measured; greys take the first. None where left out. [-], n = 3 */
  readonly drift?: Rgb;
  /** How far off each measured threshold or count of a centroid is, in standard deviations of a conversion. [sigma], n ≥ 6 */
  readonly noise: readonly number[];
}

/** A part as it is drawn. */
export const NOMINAL_MARKS: MarkVariation = {
  part: 1,
  resistor: 1,
  colours: [1, 1, 1],
  noise: [0, 0, 0, 0, 0, 0, 0, 0, 0],
};

/** True for a sensor that tells three marks apart. */
export function tellsThreeMarks(detector: Detector): boolean {
  return (
    detector.kind === 'colour-sensor' || (detector.kind === 'reflectance-pair' && detector.middleMa !== null)
  );
}

/** How a head's sensors tell three marks apart over `resistorOhm` [ohm]; `null` where they only tell light from dark. */
export function markPlan(
  detector: Detector,
  resistorOhm: number,
  circuit: CircuitSpec,
  board: Board,
): MarkPlan | null {
  if (detector.kind === 'colour-sensor') {
    const { marksRgbCounts, rejectRatio, leastSumCounts } = detector;
    const centroids = marksRgbCounts.map(chromaticityOf);
    const sums = marksRgbCounts.map(([red, green, blue]) => red + green + blue);
    const sigma = conversionSigmaCounts(circuit) / Math.min(...sums);
    const marginSigma = (nearestPair(centroids) * rejectRatio) / (1 + rejectRatio) / sigma;
    return { kind: 'colours', marksRgbCounts, centroids, rejectRatio, leastSumCounts, marginSigma };
  }
  if (detector.kind !== 'reflectance-pair' || detector.middleMa === null) return null;
  const signal = signalOf(detector, resistorOhm, circuit.sensorTo, board);
  const counts = greyLights(detector).map((light) => signal.counts(light, 1, 1));
  const between = hysteresisCounts(circuit, signal.scaleCounts);
  return { kind: 'greys', counts, thresholds: pairsOf(counts, between) };
}

/** Distance of the two colours that are most alike. [-] */
function nearestPair(centroids: readonly Chromaticity[]): number {
  const [a, b, c] = centroids as [Chromaticity, Chromaticity, Chromaticity];
  const apart = (p: Chromaticity, q: Chromaticity): number => Math.hypot(p[0] - q[0], p[1] - q[1]);
  return Math.min(apart(a, b), apart(b, c), apart(a, c));
}

/** Light of the three greys between the darkest mark and the lightest. [-], n = 3 */
function greyLights({
  litMa,
  darkMa,
  middleMa,
}: {
  litMa: number;
  darkMa: number;
  middleMa: number | null;
}): number[] {
  return [0, (middleMa! - darkMa) / (litMa - darkMa), 1];
}

function pairsOf(counts: readonly number[], hysteresis: number): [Thresholds, Thresholds] {
  return [
    thresholdsBetween(counts[1]!, counts[0]!, hysteresis),
    thresholdsBetween(counts[2]!, counts[1]!, hysteresis),
  ];
}

/**
 * The reader of one channel, as drawn or as built.
 *
 * With thresholds of its own a channel's marks are measured on it; shared ones stay as drawn.
 *
 * @param head - Detector, circuit, board, resistor [ohm] and the plan as drawn.
 * @param variation - What this channel differs in.
 */
export function markReaderOf(
  head: {
    readonly detector: Detector;
    readonly circuit: CircuitSpec;
    readonly board: Board;
    readonly resistorOhm: number;
    readonly plan: MarkPlan;
  },
  variation: MarkVariation = NOMINAL_MARKS,
): MarkReader {
  const { detector, circuit, plan } = head;
  const sigma = conversionSigmaCounts(circuit);
  const isShared = circuit.thresholds === 'shared';
  const { part, resistor, colours, noise, drift = [1, 1, 1] } = variation;
  if (plan.kind === 'colours') {
    const built = plan.marksRgbCounts.map((rgb): Rgb => {
      const [red, green, blue] = rgb.map((value, i) => value * part * resistor * colours[i]!);
      return [red!, green!, blue!];
    });
    const measured = built.map((rgb, level): Rgb => {
      const [red, green, blue] = rgb.map((value, i) => Math.max(0, value + sigma * noise[3 * level + i]!));
      return [red!, green!, blue!];
    });
    const now = built.map((rgb): Rgb => [rgb[0] * drift[0], rgb[1] * drift[1], rgb[2] * drift[2]]);
    return colourReader(now, {
      ...plan,
      centroids: isShared ? plan.centroids : measured.map(chromaticityOf),
    });
  }
  if (detector.kind !== 'reflectance-pair') return { judge: () => null, changes: () => [] };
  const signal = signalOf(detector, head.resistorOhm, circuit.sensorTo, head.board);
  const measuredOf = (light: number): number => signal.counts(light, part, resistor);
  const countsOf = (light: number): number => signal.counts(light, part * drift[0], resistor);
  const lights = greyLights(detector);
  const own = isShared
    ? plan.thresholds
    : pairsOf(lights.map(measuredOf), hysteresisCounts(circuit, signal.scaleCounts));
  const moved = own.map(({ lowCounts, highCounts }, i) => ({
    lowCounts: lowCounts + sigma * noise[i]!,
    highCounts: highCounts + sigma * noise[i]!,
  }));
  return greyReader(countsOf, lights, [moved[0]!, moved[1]!]);
}
