import { detectorDefaults } from '../../../head/index.ts';
import { FLAWLESS, withErrors, type Figures } from '../../principle.ts';
import type { Situation } from '../../situation.ts';
import { stepErrors, stepLimitDegPerS } from './madeSteps.ts';

/** Positions that one window of a counting wheel counts. [-] */
const STEPS_A_WINDOW = 4;

/** What both counting wheels have in common: they count from where they were when the power came. */
export function wheelFigures(situation: Situation, channels: number): Figures {
  const positions = STEPS_A_WINDOW * Math.ceil(situation.instrument.need.positions / STEPS_A_WINDOW);
  return {
    ...FLAWLESS,
    stepDeg: 360 / positions,
    ...withErrors(stepErrors(situation, positions)),
    powerLoss: 'lost',
    unknownHPerYear: null,
    limitDegPerS: stepLimitDegPerS(situation, {
      positions,
      channels,
      detector: detectorDefaults['slot-pair'],
    }),
  };
}
