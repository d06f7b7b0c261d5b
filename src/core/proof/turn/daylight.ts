import type { HeadPlan } from '../../head/index.ts';
import type { Conditions } from './conditions.ts';

/**
 * Daylight that is gone at night, thresholds having been set at noon; none where lights are pulsed, which take it off.
 *
 * Marks of three levels are told apart by what was measured on each, which daylight does not enter.
 *
 * @returns Share of full light. [-], ≥ 0
 */
export function daylightOf({ circuit, spec, marks }: HeadPlan): number {
  return circuit.emitters === 'pulsed' || marks !== null ? 0 : (spec.daylightShare ?? 0);
}

/** Takes daylight away from a build: every channel then needs so much more light from its window. [-] */
export function takeDaylight({ risingLight, fallingLight }: Conditions, share: number): void {
  for (let c = 0; c < risingLight.length; c++) {
    risingLight[c]! += share;
    fallingLight[c]! += share;
  }
}
