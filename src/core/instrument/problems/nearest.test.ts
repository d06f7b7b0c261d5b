import { describe, expect, it } from 'vitest';
import { nearest } from './nearest.ts';

const fields = ['diameterMm', 'hubDiameterMm', 'thicknessMm', 'webMm', 'rimMm', 'bore', 'notch'];

describe('the name a maker most likely meant', () => {
  it.each([
    ['diametrMm', 'diameterMm'],
    ['diameter', 'diameterMm'],
    ['diameter_mm', 'diameterMm'],
    ['diameterCm', 'diameterMm'],
    ['HubDiameterMM', 'hubDiameterMm'],
    ['thickness', 'thicknessMm'],
    ['web', 'webMm'],
    ['we', null],
    ['bor', 'bore'],
    ['colour', null],
    ['x', null],
    ['', null],
  ])('by %s is %s', (written, meant) => {
    expect(nearest(written, fields)).toBe(meant);
  });

  it.each([
    ['grey', 'reflected-gray'],
    ['Reflected Gray', 'reflected-gray'],
    ['binary', 'natural-binary'],
    ['reflected', 'reflected-gray'],
  ])('by the code %s is %s', (written, meant) => {
    expect(nearest(written, ['reflected-gray', 'natural-binary'])).toBe(meant);
  });

  it('is nobody, when a word belongs to two names or there are no names', () => {
    expect(nearest('grey', ['reflected-gray', 'single-track-gray'])).toBeNull();
    expect(nearest('grey', [])).toBeNull();
  });

  it('is not looked for in a name of a thousand letters', () => {
    expect(nearest('d'.repeat(1000), fields)).toBeNull();
  });
});
