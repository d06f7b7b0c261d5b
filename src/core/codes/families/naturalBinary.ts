import type { CodeFamily } from '../family.ts';
import { planFromWords, tracksFor } from '../wordTracks.ts';
import { exactChannels } from './refusals.ts';

/** Plain counting in base 2: every second boundary changes one track, every fourth two, and so on. */
export const naturalBinary: CodeFamily = {
  name: 'natural-binary',
  title: 'natural binary',
  options: ['channels'],
  refusal: (positions, { channels }) => exactChannels(positions, channels),
  build: (positions) => planFromWords([...Array(positions).keys()], tracksFor(positions)),
};
