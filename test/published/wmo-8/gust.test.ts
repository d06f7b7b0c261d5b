import { describe, expect, it } from 'vitest';
import { gustFactor, slidingGust, speedMoments, turbulenceIntensity } from '../../../src/core/wind/index.ts';

const wind = Array.from({ length: 2400 }, (_, i) => {
  const t = i / 4;
  return 8 + 2 * Math.sin((2 * Math.PI * t) / 60) + 1.5 * Math.sin((2 * Math.PI * t) / 4);
});
const moments = speedMoments(wind);
const gust = slidingGust(wind, 250)!;

describe('ten minutes at 4 Hz', () => {
  it('have a mean of 8, a deviation of 1.767767 and a highest sample of 11.456295 m/s', () => {
    expect(moments.meanMPerS).toBeCloseTo(8, 9);
    expect(Math.abs(moments.deviationMPerS - 1.767767)).toBeLessThan(5e-7);
    expect(Math.abs(moments.mostMPerS - 11.456295)).toBeLessThan(5e-7);
  });

  it('have a gust of 10.397928 m/s: sliding 3 s, not blocks of 3 s (10.339781)', () => {
    expect(Math.abs(gust.speedMPerS - 10.397928)).toBeLessThan(5e-7);
  });

  it('have a lowest 3 s mean of 5.602072 m/s', () => {
    const upsideDown = slidingGust(
      wind.map((speed) => 16 - speed),
      250,
    )!;
    expect(Math.abs(16 - upsideDown.speedMPerS - 5.602072)).toBeLessThan(5e-7);
  });

  it('have a gust factor of 1.299741 and a turbulence intensity of 0.220971', () => {
    expect(Math.abs(gustFactor(gust.speedMPerS, moments.meanMPerS)! - 1.299741)).toBeLessThan(5e-7);
    expect(Math.abs(turbulenceIntensity(moments.deviationMPerS, moments.meanMPerS)! - 0.220971)).toBeLessThan(
      5e-7,
    );
  });
});
