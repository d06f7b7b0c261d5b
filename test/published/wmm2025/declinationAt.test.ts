import { expect, it } from 'vitest';
import { declinationAt } from '../../../src/core/fit/index.ts';

// Decimal years 2025.0 and 2027.5: 1 January 2025, and half of 2027's 365 days on.
const DAYS = { 2025: '2025-01-01T00:00:00Z', 2027.5: '2027-07-02T12:00:00Z' } as const;

it.each([
  [2025, 0, 80, 0, 1.28],
  [2025, 0, 0, 120, -0.16],
  [2025, 0, -80, 240, 68.78],
  [2025, 100, 80, 0, 0.85],
  [2025, 100, 0, 120, -0.15],
  [2025, 100, -80, 240, 68.21],
  [2027.5, 0, 80, 0, 2.59],
  [2027.5, 0, 0, 120, -0.24],
  [2027.5, 0, -80, 240, 68.49],
  [2027.5, 100, 80, 0, 2.16],
  [2027.5, 100, 0, 120, -0.23],
  [2027.5, 100, -80, 240, 67.93],
] as const)('%s, %s km, %s, %s: %s deg', (year, heightKm, latitudeDeg, east, declination) => {
  const longitudeDeg = east > 180 ? east - 360 : east;
  const found = declinationAt({ latitudeDeg, longitudeDeg }, DAYS[year], heightKm);
  expect(Math.abs(found.declinationDeg - declination)).toBeLessThanOrEqual(0.005 + 1e-4);
});
