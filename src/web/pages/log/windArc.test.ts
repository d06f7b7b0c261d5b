import { describe, expect, it } from 'vitest';
import { onDial, ringPart } from './windArc.ts';

describe('the dial of the wind', () => {
  it('has north at the top and goes clockwise', () => {
    expect(onDial(0, 10)).toBe('0.00 -10.00');
    expect(onDial(90, 10)).toBe('10.00 -0.00');
    expect(onDial(180, 10)).toBe('0.00 10.00');
  });

  it('draws a part of a ring over north, and takes the long way when it is wide', () => {
    expect(ringPart(350, 370, [5, 10])).toBe(
      'M-1.74 -9.85A10 10 0 0 1 1.74 -9.85L0.87 -4.92A5 5 0 0 0 -0.87 -4.92Z',
    );
    expect(ringPart(0, 270, [10, 10])).toContain('A10 10 0 1 1 -10.00');
  });
});
