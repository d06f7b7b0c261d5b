/** Everything that can go wrong in making, each with draws of its own. The order is part of what a seed means. */
export const causeNames = [
  'edge',
  'bore',
  'placement',
  'sensor',
  'resistor',
  'threshold',
  'tilt',
  'shaft',
  'north',
] as const;

/** One cause of error in making. */
export type CauseName = (typeof causeNames)[number];
