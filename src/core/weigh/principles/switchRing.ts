import { showDegrees, showNumber } from '../../units/index.ts';
import { FLAWLESS, withErrors, type Finding, type Principle } from '../principle.ts';
import type { Situation } from '../situation.ts';

/** Switches of the usual ring, closed one or two at a time: sixteen directions. Common practice. */
const SWITCHES = 8;

const POSITIONS = 2 * SWITCHES;

/** How far the place at which one switch closes differs from the next. Own assumption, no source. [deg] */
const SWITCH_SPREAD_DEG = 3;

/** Closings until a reed contact is worn. Value from memory; Hall switches have no contacts. [-] */
const LIFE_CLOSINGS = 1e7;

/** A magnet draws each reed a little. Own assumption, no source. [N mm] */
const PULL_NMM = 0.05;

/** Room between two levels when all switches share one input through a ladder of resistors. */
function ladder({ board }: Situation): Finding {
  const counts = 2 ** board.converterBits / (POSITIONS + 1);
  return {
    isGood: true,
    costs: 'nothing',
    text: `On one input through a ladder of resistors, ${POSITIONS} levels stand at best ${showNumber(counts, 1)} counts apart.`,
    change: '',
  };
}

/** A ring of reed or Hall switches round a magnet. */
export const switchRing: Principle = {
  name: 'switch-ring',
  title: 'ring of reed or Hall switches',
  about: 'A magnet passes over eight switches in a ring and closes one or two at a time: sixteen directions.',
  isDisc: false,
  needsShaftEnd: false,
  parts: ['magnet', 'eight reed or Hall switches', 'eight resistors'],
  tools: [['fdm-printer', 'drill'], ['soldering-iron']],
  costClass: 'low',
  workHours: 4,
  figures(situation) {
    const stepDeg = 360 / POSITIONS;
    const { turnsPerYear } = situation;
    return {
      ...FLAWLESS,
      stepDeg,
      ...withErrors([
        { title: 'half a step', deg: stepDeg / 2, how: `half of ${showDegrees(stepDeg)}` },
        { title: 'switches differ', deg: SWITCH_SPREAD_DEG, how: 'they close earlier or later than drawn' },
      ]),
      frictionNmm: PULL_NMM,
      // Each switch closes once a turn, and the turns go to and fro over the same few.
      lifeYears: turnsPerYear > 0 ? LIFE_CLOSINGS / turnsPerYear : null,
      more: [ladder(situation)],
    };
  },
};
