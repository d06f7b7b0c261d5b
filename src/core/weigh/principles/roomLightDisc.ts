import { detectorDefaults } from '../../head/index.ts';
import type { Principle } from '../principle.ts';
import { discFigures } from './reckoning/discs.ts';

/** Nights and days are equally long over a year, wherever one is; twilight is not counted. [-] */
const NIGHT_SHARE = 0.5;

/** A coded disc before sensors that see whatever light there is. */
export const roomLightDisc: Principle = {
  name: 'disc-in-room-light',
  title: 'coded disc in daylight or room light',
  about: 'A disc of windows between the sky or the lamp of the room and one light sensor a track.',
  isDisc: true,
  needsShaftEnd: false,
  parts: ['coded disc', 'one photoresistor and resistor a channel'],
  tools: [['fdm-printer', 'laser-cutter', 'paper-printer'], ['soldering-iron'], ['multimeter']],
  costClass: 'low',
  workHours: 8,
  figures: (situation) => ({
    ...discFigures(situation, 'light-dark', detectorDefaults.photoresistor),
    blindShare: NIGHT_SHARE,
    showsFaults: false,
  }),
};
