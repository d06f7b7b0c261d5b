import { detectorDefaults } from '../../head/index.ts';
import type { Principle } from '../principle.ts';
import { discFigures } from './reckoning/discs.ts';

/** A coded disc between lights of its own and sensors behind small openings. */
export const focusedBeamDisc: Principle = {
  name: 'disc-with-focused-beams',
  title: 'coded disc with focused beams',
  about: 'A disc of windows in a dark box, a light and a sensor behind a small opening for every channel.',
  isDisc: true,
  needsShaftEnd: false,
  parts: ['coded disc', 'one light, sensor and resistor a channel', 'holders', 'dark box'],
  tools: [['fdm-printer', 'laser-cutter', 'paper-printer'], ['soldering-iron'], ['multimeter']],
  costClass: 'low',
  workHours: 10,
  figures(situation) {
    const { detector } = situation.instrument.head;
    // A colour sensor of the file is no part of this principle.
    const seen = detector.kind === 'colour-sensor' ? detectorDefaults.phototransistor : detector;
    return discFigures(situation, 'light-dark', seen);
  },
};
