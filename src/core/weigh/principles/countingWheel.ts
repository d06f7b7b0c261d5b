import type { Principle } from '../principle.ts';
import { wheelFigures } from './reckoning/countingWheels.ts';

/** Channels a quarter window apart. [-] */
const CHANNELS = 2;

/** Counts steps, and does not know where it is. */
export const countingWheel: Principle = {
  name: 'counting-wheel',
  title: 'counting wheel',
  about: 'A wheel of equal windows between two light barriers; every window adds or takes away four steps.',
  isDisc: false,
  needsShaftEnd: false,
  parts: ['wheel', 'two slot pairs', 'two resistors each'],
  tools: [['fdm-printer', 'laser-cutter'], ['soldering-iron']],
  costClass: 'low',
  workHours: 4,
  figures: (situation) => wheelFigures(situation, CHANNELS),
};
