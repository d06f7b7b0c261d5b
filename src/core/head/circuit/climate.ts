import type { Climate } from '../headSpec.ts';

/** What a head must bear until the maker says otherwise: a cold night, a box in the sun, a visit a year. */
export const CLIMATE_DEFAULT: Climate = { coldestC: -10, hottestC: 40, monthsBetweenSettings: 12 };

/** Temperature at which thresholds are taken to be measured. Common practice, no source. [°C] */
const SETTING_C = 20;

/** How much colder and hotter it gets than where thresholds were measured. [K], ≤ 0 and ≥ 0 */
export function kelvinRange({ climate = CLIMATE_DEFAULT }: { readonly climate?: Climate }): {
  readonly colder: number;
  readonly hotter: number;
} {
  return {
    colder: Math.min(0, climate.coldestC - SETTING_C),
    hotter: Math.max(0, climate.hottestC - SETTING_C),
  };
}
