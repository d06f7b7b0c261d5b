import { detectorDefaults } from '../../head/index.ts';
import type { Principle } from '../principle.ts';
import { discFigures } from './reckoning/discs.ts';

/** A disc printed in three colours, read by reflected light. */
export const colourDisc: Principle = {
  name: 'disc-in-colours',
  title: 'coded disc in three colours',
  about: 'A disc printed in three colours, each track read by reflected red, green and blue light.',
  isDisc: true,
  needsShaftEnd: false,
  parts: ['colour print on card', 'one sensor and three colours of light a track', 'dark box'],
  tools: [['colour-printer'], ['soldering-iron'], ['multimeter']],
  costClass: 'middle',
  workHours: 8,
  figures(situation) {
    const { detector } = situation.instrument.head;
    const seen = detector.kind === 'colour-sensor' ? detector : detectorDefaults['colour-sensor'];
    return discFigures(situation, 'colours', seen);
  },
};
