import { expect, it } from 'vitest';
import { buildCode, smallestMark } from '../index.ts';

/** Five tracks in bands of equal width between two radii, the finest outside. */
const middles = (inner: number, outer: number, tracks: number): number[] =>
  Array.from({ length: tracks }, (_, i) => inner + ((i + 0.5) * (outer - inner)) / tracks);

it('is two steps of the outermost ring for Gray, one for natural binary', () => {
  const radii = middles(15, 40, 5);
  const step = (2 * Math.PI * radii[4]!) / 32;
  expect(smallestMark(buildCode('natural-binary', 32), radii).arcMm).toBeCloseTo(step, 9);
  expect(smallestMark(buildCode('reflected-gray', 32), radii).arcMm).toBeCloseTo(2 * step, 9);
  expect(smallestMark(buildCode('reflected-gray', 32), radii).track).toBe(4);
});

it('is 4.89 mm for one ring of 360 positions with marks of seven steps at 40 mm', () => {
  const table = buildCode('single-track-gray', 360, {}, { seed: 1, mostSteps: 300_000 });
  expect(smallestMark(table, [40]).arcMm).toBeCloseTo((7 * 2 * Math.PI * 40) / 360, 9); // 4.887 mm
});

it('is the whole circumference where a track has no edge', () => {
  const table = buildCode('counting-wheel', 4);
  expect(
    smallestMark({ ...table, tracks: [{ levelCount: 2, startsDeg: [0], levels: [1] }] }, [10]).arcMm,
  ).toBeCloseTo(20 * Math.PI, 9);
});
