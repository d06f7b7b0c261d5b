import type { Board } from '../../boards/index.ts';
import type { Detector } from '../headSpec.ts';

/** One decade of the E24 series of preferred numbers. @source IEC 60063 */
const E24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8,
  7.5, 8.2, 9.1,
];

/** Resistor under a colour sensor: its counts are measured with it, so that any other only scales them. [ohm] */
const COLOUR_OHM = 10_000;

/**
 * Resistor with the widest swing of counts.
 *
 * Photoresistor: the geometric mean of lit and dark. Phototransistor: the largest that leaves a lit part linear.
 *
 * @returns Before rounding to a series. [ohm]
 * @source derived: dS/dF = 0 for S(F) = F/(F + R_lit) − F/(F + R_dark) gives F = √(R_lit R_dark).
 * @check test/published/divider
 */
export function bestResistorOhm(detector: Detector, board: Board): number {
  if (detector.kind === 'photoresistor') return Math.sqrt(detector.litOhm * detector.darkOhm);
  if (detector.kind === 'colour-sensor') return COLOUR_OHM;
  return ((board.supplyV - detector.saturationV) / detector.litMa) * 1000;
}

/**
 * Resistor to buy: the E24 value nearest to the best one, by ratio.
 *
 * Under a phototransistor it is the next value down, with room for a part two standard deviations stronger,
 * since above the best value the lit level no longer follows the light.
 *
 * @returns A value of the E24 series. [ohm]
 */
export function recommendedResistorOhm(detector: Detector, board: Board): number {
  const best = bestResistorOhm(detector, board);
  if (detector.kind === 'photoresistor') return nearestE24(best);
  if (detector.kind === 'colour-sensor') return best;
  return e24NotAbove(best / (1 + 2 * detector.spread));
}

/** E24 value nearest by ratio. [ohm] */
export function nearestE24(ohm: number): number {
  const below = e24NotAbove(ohm);
  const above = nextE24(below);
  return above / ohm < ohm / below ? above : below;
}

function e24NotAbove(ohm: number): number {
  const decade = 10 ** Math.floor(Math.log10(ohm) + 1e-12);
  const found = E24.findLast((value) => roundOhm(value * decade) <= ohm * (1 + 1e-12));
  return roundOhm((found ?? 1) * decade);
}

function nextE24(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value) + 1e-12);
  const found = E24.find((step) => step * decade > value * (1 + 1e-9));
  return roundOhm((found ?? 10) * decade);
}

/** Preferred values have two figures; the rest is rounding noise of the product. */
function roundOhm(ohm: number): number {
  return Number(ohm.toPrecision(2));
}
