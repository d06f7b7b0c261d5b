import { describe, expect, it } from 'vitest';
import { exactTurn } from '../../../src/core/proof/index.ts';
import { handDisc } from '../../support/handDisc.ts';
import { handHead, LINEAR_HEAD } from '../../support/handHead.ts';

describe('a disc without any fault', () => {
  it.each([
    [32, 3.2476, 4],
    [64, 1.6238, 4],
    [256, 0.40595, 5],
    [360, 0.28868, 5],
  ])(
    'of %i positions is %f degrees out root mean square, and half a step at most',
    (positions, rms, digits) => {
      const disc = handDisc({ positions, firstRadiusMm: 60 });
      const aperture = { shape: 'slit', widthMm: 0.2, lengthMm: 3 } as const;
      const detector = { ...LINEAR_HEAD.detector, spread: 0 };
      // A resistor well below the linear limit, so that the threshold is exactly half light.
      const { errors } = exactTurn(
        handHead(disc, { spec: { aperture, detector }, circuit: { resistorOhm: 5_000 } }),
      );
      expect(Math.abs(errors.rmsDeg! - rms)).toBeLessThanOrEqual(0.5 * 10 ** -digits);
      expect(errors.maxDeg).toBeCloseTo(180 / positions, 9);
      expect(errors.misreadShare).toBe(0);
      expect(errors.illegalShare).toBe(0);
      expect(errors.unseenPositions).toEqual([]);
    },
  );
});
