import { strFromU8, unzipSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Solid } from '../solids/solid.ts';
import { layOut } from './layOut.ts';
import { threeMfBytes } from './threeMfBytes.ts';

/** A tetrahedron in the corner of a box. */
function block(name: string, [x, y, z]: readonly [number, number, number], colour?: string): Solid {
  const mesh = {
    positionsMm: Float32Array.of(-x / 2, 0, 1, x / 2, 0, 1, -x / 2, y, 1, -x / 2, 0, z + 1),
    triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
  };
  return colour === undefined ? { name, mesh } : { name, colour, mesh };
}

describe('parts on the bed', () => {
  it('lie clear of each other, from the corner outwards, and stand on it', () => {
    const size = fc.tuple(
      fc.integer({ min: 1, max: 150 }),
      fc.integer({ min: 1, max: 150 }),
      fc.integer({ min: 1, max: 50 }),
    );
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 12 }), (sizes) => {
        const moves = layOut(
          sizes.map((each) => [block('b', each)]),
          200,
        );
        const boxes = moves.map(([x, y, z], i) => ({
          x: x - sizes[i]![0] / 2,
          y,
          z: z + 1,
          size: sizes[i]!,
        }));
        for (const [i, { x, y, z, size: own }] of boxes.entries()) {
          expect([x >= 0, y >= 0, z]).toEqual([true, true, 0]);
          for (const other of boxes.slice(i + 1)) {
            const apart = other.x >= x + own[0] || x >= other.x + other.size[0] || other.y >= y + own[1];
            expect(apart).toBe(true);
          }
        }
      }),
      { seed: 20261125 },
    );
  });
});

describe('a 3MF file', () => {
  const model = (...bodies: readonly Solid[]): string =>
    strFromU8(unzipSync(threeMfBytes('a < b', [{ name: 'whole', bodies }], 200))['3D/3dmodel.model']!);

  it('lists each colour once, and gives each body its own', () => {
    const text = model(
      block('a', [1, 1, 1], '#ff0000'),
      block('b', [1, 1, 1]),
      block('c', [1, 1, 1], '#FF0000'),
    );
    expect(text.match(/<base /g)).toHaveLength(2);
    expect(
      [...text.matchAll(/name="[abc]" type="model" pid="1" pindex="(\d)"/g)].map(([, index]) => index),
    ).toEqual(['0', '1', '0']);
  });

  it('keeps bodies of one part together in one item', () => {
    const text = model(block('a', [1, 1, 1]), block('b', [1, 1, 1]));
    expect(text.match(/<component /g)).toHaveLength(2);
    expect(text.match(/<item /g)).toHaveLength(1);
  });

  it('makes a title harmless', () => {
    expect(model(block('a', [1, 1, 1]))).toContain('a &#60; b');
  });
});
