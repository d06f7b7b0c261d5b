import { expect, it } from 'vitest';
import { showDegrees, showMm, showNumber, showSignificant } from './index.ts';

it('drops zeros that say nothing, and never shows minus nothing', () => {
  expect(showNumber(12.5, 3)).toBe('12.5');
  expect(showNumber(100, 2)).toBe('100');
  expect(showNumber(-0.0004, 3)).toBe('0');
  expect(showNumber(1200, 0)).toBe('1200');
});

it('keeps the figures of a small number, and all whole figures of a large one', () => {
  expect(showSignificant(0.5, 2)).toBe('0.5');
  expect(showSignificant(0.1, 6)).toBe('0.1');
  expect(showSignificant(0.03456, 2)).toBe('0.035');
  expect(showSignificant(-0.03456, 2)).toBe('-0.035');
  expect(showSignificant(374.6, 2)).toBe('375');
  expect(showSignificant(1_000_000, 2)).toBe('1000000');
  expect(showSignificant(0, 2)).toBe('0');
});

it('shows a length and an angle with their signs', () => {
  expect(showMm(0.21)).toBe('0.21 mm');
  expect(showDegrees(11.25)).toBe('11.25°');
});
