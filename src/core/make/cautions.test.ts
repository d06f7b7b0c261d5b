import { expect, it } from 'vitest';
import { lineClearanceM } from './cautions.ts';

it('keeps one and a half mast heights from a line, and never less than 3.05 m', () => {
  expect(lineClearanceM(10)).toBe(15);
  expect(lineClearanceM(1)).toBe(3.05);
});
