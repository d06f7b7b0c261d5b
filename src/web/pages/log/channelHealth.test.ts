import { describe, expect, it } from 'vitest';
import { channelHealth } from './channelHealth.ts';

const seen = (words: readonly (string | null)[]) =>
  words.map((word, i) => ({
    atMs: i,
    headingDeg: null,
    halfWidthDeg: null,
    speedMPerS: null,
    flags: 0,
    word,
  }));

describe('the health of channels', () => {
  it('knows nothing without words', () => {
    expect(channelHealth([])).toEqual([]);
    expect(channelHealth(seen([null, null]))).toEqual([]);
  });

  it('waits while little moves, and points at a channel that stands still among others', () => {
    expect(channelHealth(seen(['00', '01'])).map(({ says }) => says)).toEqual(['waits', 'good']);
    const turning = Array.from({ length: 41 }, (_, i) => `0${i % 2}`);
    expect(channelHealth(seen(turning))).toEqual([
      { now: '0', changes: 0, says: 'stuck' },
      { now: '0', changes: 40, says: 'good' },
    ]);
  });
});
