import type { Principle } from '../principle.ts';
import { trackFigures, type Track } from './reckoning/potentiometers.ts';

const TURNS = 10;

/** Strokes from end to end that it is made for. Value from memory: trimmers are set, not used. [-] */
const LIFE_STROKES = 200;

/** A ten-turn trimmer; its clutch slips at the ends. Linearity and friction: values from memory. */
const track: Track = {
  electricalDeg: TURNS * 360,
  travelDeg: TURNS * 360,
  linearity: 0.01,
  frictionNmm: 10,
  lifeTurns: LIFE_STROKES * TURNS,
};

/** A screw that moves a wiper, for few and slow movements. */
export const multiTurnTrimmer: Principle = {
  name: 'multi-turn-trimmer',
  title: 'multi-turn trimmer',
  about: 'A screw that moves a wiper along its track in ten turns; past the ends its clutch slips.',
  isDisc: false,
  needsShaftEnd: true,
  parts: ['ten-turn trimmer', 'coupling'],
  tools: [['soldering-iron']],
  costClass: 'lowest',
  workHours: 1,
  figures: (situation) => trackFigures(track, situation),
};
