import { expect, it } from 'vitest';
import { sunBearing } from '../../../src/core/fit/index.ts';

it('azimuth 194.340241 deg, whatever the zone the time is written in', () => {
  const site = { latitudeDeg: 39.742476, longitudeDeg: -105.1786 };
  for (const at of ['2003-10-17T12:30:30-07:00', '2003-10-17T19:30:30Z']) {
    expect(Math.abs(sunBearing(site, at).bearingDeg - 194.340241)).toBeLessThan(0.003);
  }
});
