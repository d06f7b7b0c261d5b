import type { Degrees } from '../../units/index.ts';
import type { CodeBuild, CodeFamily, CodeOptions } from '../family.ts';
import type { Track } from '../model.ts';
import { nearestOf } from './refusals.ts';

/** Positions from one window to the next: the two channels show 00, 01, 11, 10 in turn. */
const STEPS_A_WINDOW = 4;

/** Least angle between the two sensors where the wheel leaves a choice: about 12 mm at 30 mm radius. Common practice, no source. */
const LEAST_HEAD_ANGLE_DEG: Degrees = 22.5;

/** How far the index window reaches beyond its step on either side, so that it never changes together with the count. [steps] */
const INDEX_OVERLAP = 0.25;

/** Equal windows and lands, the first window from disc angle 0. */
export function comb(windows: number): Track {
  const starts = Array.from({ length: 2 * windows }, (_, i) => (i * 180) / windows);
  return { levelCount: 2, startsDeg: starts, levels: starts.map((_, i) => (i % 2 === 0 ? 1 : 0)) };
}

/** A quarter window, and as many whole windows as keep the two sensors out of each other's way. */
function secondHeadDeg(positions: number): Degrees {
  const step = 360 / positions;
  const whole = Math.max(0, Math.ceil((LEAST_HEAD_ANGLE_DEG - step) / (STEPS_A_WINDOW * step)));
  const steps = 1 + whole * STEPS_A_WINDOW;
  return (steps < positions ? steps : 1) * step;
}

function build(positions: number, { indexTrack }: CodeOptions): CodeBuild {
  const step = 360 / positions;
  const counting = [
    { track: 0, angleDeg: 0 },
    { track: 0, angleDeg: secondHeadDeg(positions) },
  ];
  const wheel = comb(positions / STEPS_A_WINDOW);
  if (!indexTrack) return { tracks: [wheel], channels: counting, countingChannels: 2 };
  const index: Track = {
    levelCount: 2,
    startsDeg: [(1 + INDEX_OVERLAP) * step, 360 - INDEX_OVERLAP * step],
    levels: [0, 1],
  };
  return { tracks: [wheel, index], channels: [...counting, { track: 1, angleDeg: 0 }], countingChannels: 2 };
}

/**
 * A wheel that counts steps and does not know where it is: two channels a quarter window apart.
 *
 * Its words repeat, so the table is not absolute: a reader remembers the last position. An index track, if asked for,
 * tells position 0 once a turn. Here so that it can be compared fairly; it forgets the direction when power fails.
 *
 * @source common practice: quadrature counting, states 00, 01, 11, 10.
 * @check test/published/quadrature
 */
export const countingWheel: CodeFamily = {
  name: 'counting-wheel',
  title: 'counting wheel',
  options: ['indexTrack'],
  refusal: (positions) => {
    if (positions % STEPS_A_WINDOW === 0) return null;
    const below = positions - (positions % STEPS_A_WINDOW);
    const nearest = nearestOf([below, below + STEPS_A_WINDOW]);
    return {
      code: 'codes/not-a-counting-wheel',
      what: 'Two channels a quarter window apart show four words in turn, so every window counts four positions.',
      allowed: `a multiple of ${STEPS_A_WINDOW}, such as ${nearest}`,
      fix: `Set need.positions to ${nearest}.`,
    };
  },
  build,
};
