import type { Principle } from '../principle.ts';
import { trackFigures, type Track } from './reckoning/potentiometers.ts';

/**
 * A potentiometer that turns without end; 340, 345 and 355 degrees are sold.
 *
 * Life of a million turns at least: common practice. Linearity and friction: values from memory.
 */
const track: Track = {
  electricalDeg: 345,
  travelDeg: null,
  linearity: 0.01,
  frictionNmm: 2,
  lifeTurns: 1_000_000,
};

/** A wiper that turns without end, and reads nothing within a gap. */
export const continuousPotentiometer: Principle = {
  name: 'continuous-potentiometer',
  title: 'continuous potentiometer with a gap',
  about: 'A wiper that turns without end on a track of 345 degrees; in the remaining 15 it touches nothing.',
  isDisc: false,
  needsShaftEnd: true,
  parts: ['continuous potentiometer', 'pull-down resistor', 'coupling'],
  tools: [['soldering-iron']],
  costClass: 'low',
  workHours: 1,
  figures: (situation) => trackFigures(track, situation),
};
