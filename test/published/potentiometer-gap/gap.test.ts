import { describe, expect, it } from 'vitest';
import { deadShare, windShares } from '../../../src/core/weigh/index.ts';

describe('the dead share of a potentiometer', () => {
  it.each([
    [270, 25, 1e-9],
    [345, 4.167, 0.0005],
    [340, 5.56, 0.005],
    [355, 1.39, 0.005],
  ])('with %s degrees of track is %s %% of a turn', (track, share, half) => {
    expect(Math.abs(100 * deadShare(track, 360) - share)).toBeLessThanOrEqual(half);
  });

  it('is nothing on a shaft that turns no farther than the track', () => {
    expect(deadShare(270, 270)).toBe(0);
    expect(deadShare(3600, 330)).toBe(0);
  });
});

describe('the chance of meeting wind in a gap', () => {
  it('is the dead share where all directions are alike, wherever the gap is', () => {
    for (const from of [-7.5, 0, 100, 352.5]) {
      expect(windShares(null).shareIn(from, 15)).toBeCloseTo(15 / 360, 12);
    }
  });

  it('is what the sectors it covers give', () => {
    // Four sectors of 90 degrees centred on N, E, S, W with shares 1, 2, 3, 4: ten in all.
    const { shareIn } = windShares([1, 2, 3, 4]);
    expect(shareIn(-45, 90)).toBeCloseTo(0.1, 12);
    expect(shareIn(45, 90)).toBeCloseTo(0.2, 12);
    // From 30 to 60: fifteen degrees of north's 90 and fifteen of east's.
    expect(shareIn(30, 30)).toBeCloseTo((15 / 90) * 0.1 + (15 / 90) * 0.2, 12);
    // Across north from the west: 300 to 330 is half west (to 315), half north.
    expect(shareIn(300, 30)).toBeCloseTo((15 / 90) * 0.4 + (15 / 90) * 0.1, 12);
    expect(shareIn(123, 360)).toBeCloseTo(1, 12);
  });
});
