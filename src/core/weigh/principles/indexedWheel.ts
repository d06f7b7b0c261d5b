import type { Principle } from '../principle.ts';
import { wheelFigures } from './reckoning/countingWheels.ts';

/** Two that count and one that knows its place. [-] */
const CHANNELS = 3;

/** Counts steps, and learns where it is once its index passes. */
export const indexedWheel: Principle = {
  name: 'counting-wheel-with-index',
  title: 'counting wheel with an index switch',
  about: 'A counting wheel with one switch more, which closes at a single place of the turn.',
  isDisc: false,
  needsShaftEnd: false,
  parts: ['wheel', 'three slot pairs, or two and a reed switch', 'two resistors each'],
  tools: [['fdm-printer', 'laser-cutter'], ['soldering-iron']],
  costClass: 'low',
  workHours: 5,
  figures: (situation) => ({
    ...wheelFigures(situation, CHANNELS),
    powerLoss: 'until-index',
    wait: situation.waits.best,
    waitAtNorth: situation.waits.north,
    unknownHPerYear: situation.instrument.sensing.powerCutsPerYear * situation.waits.best.meanH,
  }),
};
