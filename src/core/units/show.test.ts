import { expect, it } from 'vitest';
import { showDegrees, showMm, showNumber } from './index.ts';

it('drops zeros that say nothing, and never shows minus nothing', () => {
  expect(showNumber(12.5, 3)).toBe('12.5');
  expect(showNumber(100, 2)).toBe('100');
  expect(showNumber(-0.0004, 3)).toBe('0');
  expect(showNumber(1200, 0)).toBe('1200');
});

it('shows a length and an angle with their signs', () => {
  expect(showMm(0.21)).toBe('0.21 mm');
  expect(showDegrees(11.25)).toBe('11.25°');
});
