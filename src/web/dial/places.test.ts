import { describe, expect, it } from 'vitest';
import { sectorPath } from './places.ts';

describe('the outline of a rib', () => {
  it('goes round its ring sector, index mark up and angles clockwise', () => {
    expect(sectorPath({ innerRadiusMm: 10, outerRadiusMm: 20, fromDeg: 0, toDeg: 90 })).toBe(
      'M0.0000 -10.0000L0.0000 -20.0000A20 20 0 0 1 20.0000 -0.0000L10.0000 -0.0000A10 10 0 0 0 0.0000 -10.0000Z',
    );
  });

  it('takes the long way where it spans more than half a turn', () => {
    expect(sectorPath({ innerRadiusMm: 10, outerRadiusMm: 20, fromDeg: 10, toDeg: 300 })).toContain(
      'A20 20 0 1 1',
    );
  });
});
