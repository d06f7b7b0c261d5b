import type { CodeFamily } from '../family.ts';
import { planFromWords, tracksFor } from '../wordTracks.ts';

/** Plain counting in base 2: every second boundary changes one track, every fourth two, and so on. */
export const naturalBinary: CodeFamily = {
  name: 'natural-binary',
  title: 'natural binary',
  options: [],
  refusal: () => null,
  build: (positions) => planFromWords([...Array(positions).keys()], tracksFor(positions)),
};
