import { expect, it } from 'vitest';
import type { Finding } from '../../faults/index.ts';
import { spoiltBy, withoutSpoilt } from './spoilt.ts';

const columns = {
  atMs: Float64Array.of(10, 20, 30, 40),
  headingDeg: Float64Array.of(1, 2, 3, 4),
  speedMPerS: Float64Array.of(1, 2, 3, 4),
  read: Uint8Array.of(3, 3, 3, 3),
};
const finding = (more: Partial<Finding>): Finding => ({ sinceMs: 20, untilMs: 30, ...more }) as Finding;

it('marks what a fault spoils as not read, and leaves the given samples alone', () => {
  const spoilt = spoiltBy([finding({ spoils: 'heading' }), finding({ spoils: 'nothing', sinceMs: 0 })]);
  expect([...withoutSpoilt(columns, spoilt).read]).toEqual([3, 2, 2, 3]);
  expect([...columns.read]).toEqual([3, 3, 3, 3]);
});

it('goes on to the end while a fault lasts', () => {
  const spoilt = spoiltBy([
    finding({ spoils: 'both', untilMs: null }),
    finding({ spoils: 'speed', sinceMs: 5, untilMs: 10 }),
  ]);
  expect([...withoutSpoilt(columns, spoilt).read]).toEqual([1, 0, 0, 0]);
});

it('hands the same samples on where nothing is spoilt', () => {
  expect(withoutSpoilt(columns, spoiltBy([finding({ spoils: 'both', sinceMs: 50, untilMs: 60 })]))).toBe(
    columns,
  );
});
