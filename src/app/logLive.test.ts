import { describe, expect, it } from 'vitest';
import { sampleAt } from '../../test/contracts/sampleStore.ts';
import { LiveStations, type LiveWind } from './logLive.ts';

const start = Date.parse('2026-05-01T00:00:00Z');

describe('the wind of now', () => {
  it('is averaged over two and ten minutes, with the gust of the published fixture', () => {
    const live = new LiveStations();
    // Gust fixture: 4 Hz, u = 8 + 2 sin(2πt/60) + 1.5 sin(2πt/4); mean 8, highest sliding 3 s mean 10.397928.
    for (let i = 0; i < 2400; i++) {
      const t = i / 4;
      const speedMPerS = 8 + 2 * Math.sin((2 * Math.PI * t) / 60) + 1.5 * Math.sin((2 * Math.PI * t) / 4);
      live.take([sampleAt(start + 250 * i, { speedMPerS, headingDeg: i % 2 === 0 ? 350 : 10 })]);
    }
    const wind = live.wind('jetty')!;
    expect(wind.tenMinutes.speedMPerS).toBeCloseTo(8, 6);
    expect(wind.gust!.speedMPerS).toBeCloseTo(10.397928, 4);
    expect(Math.min(wind.tenMinutes.headingDeg!, 360 - wind.tenMinutes.headingDeg!)).toBeLessThan(1e-9);
    expect(wind.tenMinutes.agreement).toBeCloseTo(0.984807753, 8);
    expect([wind.twoMinutes.samples, wind.tenMinutes.samples]).toEqual([480, 2400]);
  });

  it('forgets what is older than ten minutes', () => {
    const live = new LiveStations();
    for (let i = 0; i < 5000; i++) live.take([sampleAt(start + 1000 * i, { speedMPerS: i < 4000 ? 20 : 2 })]);
    const { tenMinutes, gust } = live.wind('jetty')!;
    expect([tenMinutes.samples, tenMinutes.speedMPerS, gust!.speedMPerS]).toEqual([600, 2, 2]);
  });

  it('has no direction in a calm, and is not led astray by old samples', () => {
    const live = new LiveStations();
    for (let i = 0; i < 20; i++) live.take([sampleAt(start + 1000 * i, { speedMPerS: 0, headingDeg: 0 })]);
    live.take([sampleAt(start - 1e9, { speedMPerS: 30 })]);
    const { tenMinutes } = live.wind('jetty')!;
    expect(tenMinutes).toMatchObject({ headingDeg: null, speedMPerS: 0, calms: 20 });
    expect(live.wind('nobody')).toBeNull();
  });

  it('is told to whoever listens', () => {
    const live = new LiveStations();
    const heard: LiveWind[] = [];
    const end = live.listen((wind) => heard.push(wind));
    live.take([sampleAt(start), sampleAt(start, { station: 'pier' })]);
    end();
    live.take([sampleAt(start + 1000)]);
    expect(heard.map(({ station }) => station)).toEqual(['jetty', 'pier']);
    expect(live.stations()).toEqual(['jetty', 'pier']);
  });
});
