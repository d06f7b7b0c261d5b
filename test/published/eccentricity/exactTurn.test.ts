import { describe, expect, it } from 'vitest';
import { exactTurn } from '../../../src/core/proof/index.ts';
import { apartDeg } from '../../support/denseTurn.ts';
import { handDisc } from '../../support/handDisc.ts';
import { handHead } from '../../support/handHead.ts';

/** A disc of two halves at one radius: its edges stand at 0 and 180 degrees. */
function halvesAt(radiusMm: number) {
  return handHead(handDisc({ family: 'natural-binary', positions: 2, firstRadiusMm: radiusMm }));
}

describe('a disc off its axis', () => {
  it.each([
    [0.1, 35, 0.1637, 4],
    [0.2, 20, 0.57297, 5],
    [1, 30, 1.91021, 5],
  ])('by %f mm shows an edge at %i mm radius %f degrees out', (offset, radius, error, digits) => {
    const { growing } = exactTurn(halvesAt(radius), { boreMm: [0, offset] });
    const starts = growing.map((stretch) => stretch.fromDeg).sort((a, b) => a - b);
    expect(Math.abs(starts[0]! - error)).toBeLessThanOrEqual(0.5 * 10 ** -digits);
    expect(Math.abs(180 - starts[1]! - error)).toBeLessThanOrEqual(0.5 * 10 ** -digits);
  });

  it('along the line of its edges shows them where they are', () => {
    const { growing } = exactTurn(halvesAt(30), { boreMm: [1, 0] });
    for (const { fromDeg } of growing) {
      expect(Math.min(apartDeg(fromDeg, 0), apartDeg(fromDeg, 180))).toBeLessThan(1e-9);
    }
  });
});
