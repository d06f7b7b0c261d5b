import type { SeenSample } from '../../record/recordData.ts';

/** What is known of one channel from the words of some time. */
export interface ChannelHealth {
  /** Digit of the last word; `null` where that could not be read. */
  readonly now: string | null;
  /** [-] */
  readonly changes: number;
  readonly says: 'good' | 'waits' | 'stuck';
}

/** Changes of the others together, from which on a channel that never changed stands out. [-] */
const ENOUGH_CHANGES = 40;

/**
 * Health of every channel, as the words of the last while show it.
 *
 * @returns Channel 0 first; empty where no words were logged.
 */
export function channelHealth(samples: readonly SeenSample[]): ChannelHealth[] {
  const words = samples.flatMap(({ word }) => (word === null ? [] : [word]));
  const last = words.at(-1);
  if (last === undefined) return [];
  const changes = Array.from({ length: last.length }, () => 0);
  for (let i = 1; i < words.length; i++) {
    for (let channel = 0; channel < last.length; channel++)
      if (words[i]![channel] !== words[i - 1]![channel]) changes[channel]!++;
  }
  const all = changes.reduce((sum, count) => sum + count, 0);
  return changes.map((count, channel) => {
    const says = count > 0 ? 'good' : all >= ENOUGH_CHANGES ? 'stuck' : 'waits';
    return { now: last[channel] ?? null, changes: count, says };
  });
}
