import type { Board } from '../../boards/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Levels } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import type { Findings } from './findings.ts';

/** What daylight does to lights that are pulsed: what it adds is taken off, unless it leaves the converter no room. */
export function daylightFindings(
  { detector, daylightShare = 0 }: HeadSpec,
  { emitters }: CircuitSpec,
  board: Board,
  { resistorOhm }: Levels,
): Findings {
  const nothing = { problems: [], warnings: [] };
  if (emitters !== 'pulsed' || daylightShare === 0) return nothing;
  if (detector.kind === 'photoresistor' || detector.kind === 'colour-sensor') return nothing;
  const { litMa, darkMa, saturationV, spread } = detector;
  const most = (board.supplyV - saturationV) / (resistorOhm / 1000);
  const strong = (1 + 2 * spread) * (litMa + daylightShare * (litMa - darkMa));
  if (strong <= most) return nothing;
  const fits = Math.floor(resistorOhm * (most / strong));
  return {
    problems: [
      {
        code: 'head/daylight-saturates',
        what: 'In daylight a lit sensor has no room left, so that taking the daylight off leaves nothing.',
        where: 'head.daylightShare',
        got: `${showNumber(strong, 3)} mA through ${showNumber(resistorOhm, 0)} ohm, two standard deviations counted`,
        allowed: `${showNumber(most, 3)} mA at most`,
        fix: `Set circuit.resistorOhm to ${fits} (ohm) or less, or shut out more daylight.`,
      },
    ],
    warnings: [],
  };
}
