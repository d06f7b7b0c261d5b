import { degToRad } from '../../units/index.ts';
import type { Bore, RingSector } from '../discSpec.ts';
import { boreCircleMm, boreSides } from '../layout/bore.ts';

/** Area of a flat shape, and how it lies about the axis; y points to disc angle 0, x to disc angle 90. */
export interface Moments {
  readonly areaMm2: number;
  /** Integral of x, and of y, over the area. [mm³] */
  readonly xMm3: number;
  readonly yMm3: number;
  /** Integral of the squared distance from the axis over the area. [mm⁴] */
  readonly polarMm4: number;
}

/** No area. */
export const NOTHING: Moments = { areaMm2: 0, xMm3: 0, yMm3: 0, polarMm4: 0 };

/** Moments of shapes side by side, each taken as often as its share says; -1 takes it away. */
export function summed(parts: readonly (readonly [share: number, moments: Moments])[]): Moments {
  return parts.reduce(
    (sum, [share, { areaMm2, xMm3, yMm3, polarMm4 }]) => ({
      areaMm2: sum.areaMm2 + share * areaMm2,
      xMm3: sum.xMm3 + share * xMm3,
      yMm3: sum.yMm3 + share * yMm3,
      polarMm4: sum.polarMm4 + share * polarMm4,
    }),
    NOTHING,
  );
}

/**
 * Moments of a piece of a ring.
 *
 * @source closed form: the integrals over radius and angle, of r, r² sin, r² cos and r³.
 * @check src/core/disc/balance/balance.test.ts (sums over small cells)
 */
export function sectorMoments({ innerRadiusMm, outerRadiusMm, fromDeg, toDeg }: RingSector): Moments {
  const [from, to] = [degToRad(fromDeg), degToRad(toDeg)];
  const power = (n: number): number => (outerRadiusMm ** n - innerRadiusMm ** n) / n;
  return {
    areaMm2: (to - from) * power(2),
    xMm3: (Math.cos(from) - Math.cos(to)) * power(3),
    yMm3: (Math.sin(to) - Math.sin(from)) * power(3),
    polarMm4: (to - from) * power(4),
  };
}

/**
 * Moments of a triangle between the axis and a chord of a circle.
 *
 * @source closed form: area r²/2 sin φ; centre of gravity at two thirds of its height d = r cos(φ/2); polar moment
 * d⁴/2 (tan(φ/2) + tan³(φ/2) / 3).
 */
function chordMoments(radius: number, fromDeg: number, spanDeg: number): Moments {
  const half = degToRad(spanDeg) / 2;
  const height = radius * Math.cos(half);
  const middle = degToRad(fromDeg) + half;
  const areaMm2 = radius * Math.sin(half) * height;
  const arm = (2 / 3) * height * areaMm2;
  return {
    areaMm2,
    xMm3: arm * Math.sin(middle),
    yMm3: arm * Math.cos(middle),
    polarMm4: (height ** 4 / 2) * (Math.tan(half) + Math.tan(half) ** 3 / 3),
  };
}

/** Moments of the hole on the shaft. */
export function boreMoments(bore: Bore): Moments {
  const radius = boreCircleMm(bore) / 2;
  return summed(
    boreSides(bore).map(({ fromDeg, spanDeg, isFlat }) => {
      const sector = { innerRadiusMm: 0, outerRadiusMm: radius, fromDeg, toDeg: fromDeg + spanDeg };
      return [1, isFlat ? chordMoments(radius, fromDeg, spanDeg) : sectorMoments(sector)];
    }),
  );
}
