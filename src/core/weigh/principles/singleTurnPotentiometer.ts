import type { Principle } from '../principle.ts';
import { trackFigures, type Track } from './reckoning/potentiometers.ts';

/**
 * A panel potentiometer.
 *
 * 270 degrees with an end stop: common practice. Linearity, friction and life: values from memory.
 */
const track: Track = {
  electricalDeg: 270,
  travelDeg: 270,
  linearity: 0.02,
  frictionNmm: 5,
  lifeTurns: 20_000,
};

/** A wiper on three quarters of a turn, with an end stop. */
export const singleTurnPotentiometer: Principle = {
  name: 'single-turn-potentiometer',
  title: 'single-turn potentiometer',
  about: 'A wiper on a resistive track of 270 degrees, with a stop at either end.',
  isDisc: false,
  needsShaftEnd: true,
  parts: ['potentiometer', 'coupling'],
  tools: [['soldering-iron']],
  costClass: 'lowest',
  workHours: 1,
  figures: (situation) => trackFigures(track, situation),
};
