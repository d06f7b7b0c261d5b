import type { HeadPlan } from '../../head/index.ts';
import { showDegrees, showNumber } from '../../units/index.ts';
import type { FittedAngles } from '../angles/fitAngles.ts';
import { medianOf } from '../levels/spread.ts';
import type { Cause } from './cause.ts';

/** A lag that shifts edges by more than this share of a step is told. [-]; own choice */
const LEAST_SHARE = 0.1;

/** What the sensors' lag may have done at the speed of the hand. */
export function speedCause({ chains }: FittedAngles, head: HeadPlan): Cause[] {
  const speeds = chains.flatMap(({ crossings, sightings }) => {
    const ms = crossings.at(-1)!.timeMs - crossings[0]!.timeMs;
    const turned = Math.abs(sightings.at(-1)!.drawnDeg - sightings[0]!.drawnDeg);
    return ms > 0 ? [(1000 * turned) / ms] : [];
  });
  const degPerS = medianOf(speeds);
  const lagMs = head.speed.lagMs;
  const shift = (degPerS * lagMs) / 1000;
  const step = 360 / head.disc.code.positions;
  if (shift < LEAST_SHARE * step) return [];
  const slower = (LEAST_SHARE * step * 1000) / lagMs;
  return [
    {
      kind: 'turned-too-fast',
      standing: 'know',
      costDeg: shift / 2,
      title: 'The vane was turned fast for its sensors',
      evidence:
        `At ${showNumber(degPerS, 0)} deg/s a sensor that lags by ${showNumber(lagMs, 0)} ms, as the file says, moves its edges by up to ` +
        `${showDegrees(Number(shift.toFixed(1)))}.`,
      instruction: `Turn at ${showNumber(slower, 0)} deg/s or slower: one turn in ${showNumber(Math.ceil(360 / slower), 0)} s.`,
      picture: 'signals',
      channels: [],
    },
  ];
}
