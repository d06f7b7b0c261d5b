import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead } from '../../../../test/support/handHead.ts';
import { radToDeg } from '../../units/index.ts';
import { exactTurn } from './exactTurn.ts';

const WIDE = { shape: 'slit', widthMm: 2, lengthMm: 4 } as const;
/** Low enough for a linear detector to stay linear: its thresholds then lie at half light. */
const want = { spec: { aperture: WIDE }, circuit: { resistorOhm: 5_000 } };
const shape = { positions: 8, firstRadiusMm: 20, pitchMm: 6, webMm: 1 };
const disc = handDisc(shape);
const seen = { track: 1, window: disc.tracks[1]!.windows[0]! };

/** A rib of that width along the inner edge of a window, over its first ten degrees. */
function ribbed(widthMm: number) {
  const { innerRadiusMm, fromDeg } = seen.window;
  const rib = { innerRadiusMm, outerRadiusMm: innerRadiusMm + widthMm, fromDeg, toDeg: fromDeg + 10 };
  return exactTurn(handHead(handDisc({ ...shape, ribs: [rib] }), want));
}

describe('the shadow of a rib', () => {
  it.each([0.8, 1, 1.2])(
    'moves the edge of its window by what it takes of the spot: a rib %f mm wide',
    (widthMm) => {
      const { midRadiusMm, innerRadiusMm } = disc.tracks[seen.track]!;
      // Of the slit, which reaches 2 mm inwards, the rib covers what lies within its own outer edge.
      const share = (innerRadiusMm + widthMm - (midRadiusMm - WIDE.lengthMm / 2)) / WIDE.lengthMm;
      // Half light is reached where 1/2 = (1 - share) (x + w/2) / w, x being how far the slit's middle is past the edge.
      const pastMm = (WIDE.widthMm * 0.5) / (1 - share) - WIDE.widthMm / 2;
      const moved = radToDeg(Math.asin(pastMm / midRadiusMm));
      expect(moved).toBeGreaterThan(0.1);
      const edge = seen.window.fromDeg;
      for (const sense of ['growing', 'falling'] as const) {
        const plain = exactTurn(handHead(disc, want))[sense];
        const shaded = ribbed(widthMm)[sense];
        expect(shaded).toHaveLength(plain.length);
        for (const [i, { fromDeg }] of plain.entries()) {
          const isItsEdge = apartDeg(fromDeg, edge) < 1e-6;
          expect(apartDeg(shaded[i]!.fromDeg, isItsEdge ? edge + moved : fromDeg)).toBeLessThan(1e-4);
        }
      }
    },
  );

  it('is in the error of the turn', () => {
    const plain = exactTurn(handHead(disc, want)).errors.maxDeg!;
    expect(ribbed(1.2).errors.maxDeg!).toBeGreaterThan(plain + 0.1);
  });
});
