import type { ContrastReadings } from './couponReadings.ts';

/** What a material does to the light that is really used. */
export interface Contrast {
  /** Share of the light that one layer lets through. [-], 0..1 */
  readonly oneLayer: number;
  /** Share that two layers let through. [-], 0..1 */
  readonly twoLayers: number;
  /** Open over one layer; infinite where nothing comes through. [-] */
  readonly ratio: number;
  readonly verdict: 'one layer' | 'two layers' | 'neither';
}

/**
 * Most light that a land may let through. [-]
 *
 * @source half of 1/7.25, the leak at which a photoresistor divider's swing is spent: common practice, no source.
 */
export const MOST_LEAK = 0.07;

/**
 * Whether one or two layers stop the light, from three readings with the light and sensor that will be used.
 *
 * Nothing is said of other thicknesses: printed plastic scatters, and does not follow one exponential.
 *
 * @param readings - On any scale that grows with light, dark at 0.
 * @source Hamp, Logan & Shaw, Appl. Opt. 60, 6573 (2021): no simple exponential in printed plastic.
 * @check src/core/disc/measured/corrections.test.ts
 */
export function contrastOf({ open, oneLayer, twoLayers }: ContrastReadings): Contrast {
  const [one, two] = [oneLayer / open, twoLayers / open];
  const verdict = one <= MOST_LEAK ? 'one layer' : two <= MOST_LEAK ? 'two layers' : 'neither';
  return { oneLayer: one, twoLayers: two, ratio: open / oneLayer, verdict };
}
