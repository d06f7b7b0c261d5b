import type { CodeFamily } from '../family.ts';
import { MOST_CHANNELS } from '../model.ts';
import { trackFromCells } from '../track.ts';
import { nearestOf } from './refusals.ts';

/** Steps over which the window closes a switch: wide enough to close two at once halfway between them. */
const WINDOW_STEPS = 3;

/** Directions of the fewest switches that differ, and of the most that can be wired. */
const LEAST = 6;
const MOST = 2 * MOST_CHANNELS;

/**
 * A ring of switches closed one or two at a time: n switches tell 2n directions apart.
 *
 * One window, three steps wide, passes under switches two steps apart. All switches open and all closed are illegal.
 *
 * @source common practice, no source: eight reed switches under one magnet give sixteen directions.
 * @check src/core/codes/families/switchRing.test.ts
 */
export const switchRing: CodeFamily = {
  name: 'switch-ring',
  title: 'ring of switches',
  options: [],
  refusal: (positions) => {
    if (positions % 2 === 0 && positions >= LEAST && positions <= MOST) return null;
    const nearest =
      positions < LEAST ? LEAST : positions > MOST ? MOST : nearestOf([positions - 1, positions + 1]);
    return {
      code: 'codes/not-a-switch-ring',
      what:
        'A ring of n switches, closed one or two at a time, tells 2n directions apart: ' +
        `the positions are even, three switches are the fewest that differ, and ${MOST_CHANNELS} are the most.`,
      allowed: `an even number of positions from ${LEAST} to ${MOST}`,
      fix: `Set need.positions to ${nearest}.`,
    };
  },
  build: (positions) => ({
    tracks: [trackFromCells(Array.from({ length: positions }, (_, k) => (k < WINDOW_STEPS ? 1 : 0)))],
    channels: Array.from({ length: positions / 2 }, (_, c) => ({
      track: 0,
      angleDeg: (c * 720) / positions,
    })),
  }),
};
