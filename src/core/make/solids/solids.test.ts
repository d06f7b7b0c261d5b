import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, corners, flatAreaMm2, flatOutlines } from './flat.ts';
import { meshBox, meshVolumeMm3 } from './meshFacts.ts';
import { meshStl } from './meshStl.ts';
import { circleOutline, outlineAt, rectangleOutline, type Outline } from './outline.ts';
import { sharpEdges } from './sharpEdges.ts';
import { withShapes, type ShapeKit } from './shapeKit.ts';
import type { Mesh } from './solid.ts';

/** Area by the shoelace sum, against the clock positive. */
function areaOf(outline: Outline): number {
  return outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

function made(work: (kit: ShapeKit) => ReturnType<ShapeKit['cylinder']>): Promise<Mesh> {
  return withShapes((kit) => work(kit).mesh());
}

describe('a circle in straight sides', () => {
  it('has exactly the area of the circle, and follows it to a hundredth of a millimetre', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 300, noNaN: true }), (radius) => {
        const outline = circleOutline(radius, [3, -2]);
        expect(areaOf(outline) / (Math.PI * radius ** 2)).toBeCloseTo(1, 10);
        for (const [x, y] of outline)
          expect(Math.abs(Math.hypot(x - 3, y + 2) - radius)).toBeLessThan(0.0101);
      }),
      { seed: 20261125 },
    );
  });
});

describe('places of the head', () => {
  it('turn clockwise from straight up, as disc angles do', () => {
    const [[x, y]] = outlineAt([[0, 0]], 10, 90) as [readonly [number, number]];
    expect(x).toBeCloseTo(10, 12);
    expect(y).toBeCloseTo(0, 12);
  });
});

describe('a solid', () => {
  it.each([
    {
      name: 'box',
      volume: 6,
      work: (kit: ShapeKit) => kit.box([0, 1], [0, 2], [0, 3]),
    },
    {
      name: 'cylinder with a hole beside its middle',
      volume: Math.PI * (100 - 9) * 5,
      work: (kit: ShapeKit) => kit.cylinder(10, [0, 5]).minus(kit.cylinder(3, [-1, 6], [4, 0])),
    },
    {
      name: 'cone turned from its profile',
      volume: (Math.PI * 4 ** 2 * 6) / 3,
      work: (kit: ShapeKit) =>
        kit.turnedProfile(
          [
            [0, 0],
            [4, 0],
            [0, 6],
          ],
          4,
        ),
    },
    {
      name: 'two boxes that share a corner of space',
      volume: 8 + 8 - 1,
      work: (kit: ShapeKit) => kit.box([0, 2], [0, 2], [0, 2]).plus(kit.box([1, 3], [1, 3], [1, 3])),
    },
    {
      name: 'what is common to them',
      volume: 1,
      work: (kit: ShapeKit) => kit.box([0, 2], [0, 2], [0, 2]).common(kit.box([1, 3], [1, 3], [1, 3])),
    },
  ])('has the volume of the closed form: $name', async ({ work, volume }) => {
    expect(meshVolumeMm3(await made(work)) / volume).toBeCloseTo(1, 5);
  });

  it('is the same to the last bit when made again after others', async () => {
    const work = (kit: ShapeKit) =>
      kit.cylinder(9, [0, 4]).minus(kit.box([-1, 1], [-20, 20], [2, 9]), kit.cylinder(2, [-1, 9], [4, 1]));
    const first = await made(work);
    await made((kit) => kit.cylinder(3, [0, 1]).plus(kit.box([0, 9], [0, 1], [0, 1])));
    const second = await made(work);
    expect(meshStl({ name: 'x', mesh: second })).toEqual(meshStl({ name: 'x', mesh: first }));
  });

  it('stands on the bed where it is told to', async () => {
    const mesh = await made((kit) => kit.box([0, 1], [0, 1], [5, 8]).turnedOver().onBed());
    expect(meshBox(mesh)).toMatchObject({ low: [-1, 0, 0], high: [0, 1, 3] });
  });

  it('is drawn narrower in its first layer, and wider inside its holes, by the measured foot', async () => {
    const [side, hole, high, foot, layer] = [20, 6, 5, 0.15, 0.3];
    const mesh = await made((kit) =>
      kit
        .prism([rectangleOutline([side, side]), rectangleOutline([hole, hole])], [0, high])
        .withoutFoot({ growthMm: foot, layerMm: layer }),
    );
    const first = (side - 2 * foot) ** 2 - (hole + 2 * foot) ** 2;
    expect(meshVolumeMm3(mesh)).toBeCloseTo(first * layer + (side ** 2 - hole ** 2) * (high - layer), 2);
  });
});

describe('the edges of a part', () => {
  it('are twelve on a box, all sharp', async () => {
    const edges = sharpEdges(await made((kit) => kit.box([0, 1], [0, 2], [0, 3])));
    expect(edges.length).toBe(12);
    expect(edges.every(({ isSharp }) => isSharp)).toBe(true);
  });

  it('leave the sides of a cylinder out', async () => {
    const edges = sharpEdges(await made((kit) => kit.cylinder(5, [0, 3])));
    expect(edges.filter(({ isSharp }) => isSharp).length).toBe(2 * circleOutline(5).length);
  });
});

describe('a flat part', () => {
  it('has the area of its lines, circles as circles', () => {
    const part = [corners(rectangleOutline([30, 20])), circle(3, [5, 0]), circle(2, [-5, 0])];
    expect(flatAreaMm2(part)).toBeCloseTo(600 - 13 * Math.PI, 10);
    expect(flatOutlines(part).map((outline) => Math.round(areaOf(outline) * 1e6) / 1e6)).toEqual(
      [600, 9 * Math.PI, 4 * Math.PI].map((area) => Math.round(area * 1e6) / 1e6),
    );
  });
});
