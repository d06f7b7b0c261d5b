import type { Manifold } from 'manifold-3d';
import { BrokenPromise } from '../../error/index.ts';
import type { Degrees } from '../../units/index.ts';
import { solidKernel, type SolidKernel } from './kernel.ts';
import { meshOf } from './meshOf.ts';
import { circleOutline, type Outline, type Place } from './outline.ts';
import type { Mesh } from './solid.ts';

/** From and to along one axis. [mm] */
export type Span = readonly [fromMm: number, toMm: number];

/** How the first layer of a print is squeezed wider, and how thick that layer is. */
export interface Foot {
  /** How far each edge comes out beyond the layers above. [mm] */
  readonly growthMm: number;
  readonly layerMm: number;
}

/** A body that can be added to, cut from, moved and turned; every method gives a new one. */
export class Shape {
  readonly #body: Manifold;
  readonly #kit: ShapeKit;

  constructor(body: Manifold, kit: ShapeKit) {
    this.#body = body;
    this.#kit = kit;
  }

  plus(...others: readonly Shape[]): Shape {
    return this.#keep(this.#kit.kernel.Manifold.union([this.#body, ...others.map((other) => other.#body)]));
  }

  minus(...others: readonly Shape[]): Shape {
    const { Manifold } = this.#kit.kernel;
    return this.#keep(Manifold.difference([this.#body, ...others.map((other) => other.#body)]));
  }

  common(other: Shape): Shape {
    return this.#keep(this.#body.intersect(other.#body));
  }

  /** Moved along x, y and z. [mm] */
  moved(x: number, y: number, z: number): Shape {
    return this.#keep(this.#body.translate([x, y, z]));
  }

  /** Turned about the z axis, clockwise seen from above, as disc angles grow. [deg] */
  turned(angle: Degrees): Shape {
    return this.#keep(this.#body.rotate([0, 0, -angle]));
  }

  /** Turned over about the y axis, so that what looked up lies on the bed. */
  turnedOver(): Shape {
    return this.#keep(this.#body.rotate([0, 180, 0]));
  }

  /** Turned about the x axis: y becomes z. [deg] */
  tilted(angle: Degrees): Shape {
    return this.#keep(this.#body.rotate([angle, 0, 0]));
  }

  /** Stretched along x and y. [-] */
  stretched(x: number, y: number): Shape {
    return x === 1 && y === 1 ? this : this.#keep(this.#body.scale([x, y, 1]));
  }

  /** Lowered or raised until it stands on z = 0. */
  onBed(): Shape {
    return this.moved(0, 0, -this.#body.boundingBox().min[2]);
  }

  /** Drawn narrower in its first layer by as much as that layer comes out wider. Must be upright within that layer. */
  withoutFoot({ growthMm, layerMm }: Foot): Shape {
    if (growthMm === 0) return this;
    const outline = this.#kit.track(this.#body.slice(layerMm / 2));
    const narrowed = this.#kit.track(outline.offset(-growthMm, 'Miter', 2));
    const { min, max } = this.#body.boundingBox();
    const [below, beside] = [min[2] - 1, 1];
    const slab = this.#kit.box(
      [min[0] - beside, max[0] + beside],
      [min[1] - beside, max[1] + beside],
      [below, layerMm],
    );
    const kept = this.#keep(this.#kit.kernel.Manifold.extrude(narrowed, layerMm + 2 - below)).moved(
      0,
      0,
      below - 1,
    );
    return this.minus(slab.minus(kept));
  }

  /** Separate pieces it consists of. */
  pieces(): number {
    return this.#body.decompose().map((piece) => this.#kit.track(piece)).length;
  }

  volumeMm3(): number {
    return this.#body.volume();
  }

  mesh(): Mesh {
    return meshOf(this.#body, (object) => this.#kit.track(object));
  }

  #keep(body: Manifold): Shape {
    return this.#kit.keep(body);
  }
}

/** Makes bodies and frees them all at the end. */
export class ShapeKit {
  readonly kernel: SolidKernel;
  readonly #objects: { delete(): void }[] = [];

  constructor(kernel: SolidKernel) {
    this.kernel = kernel;
  }

  /** Remembers an object of the kernel, to be freed. */
  track<Thing extends { delete(): void }>(thing: Thing): Thing {
    this.#objects.push(thing);
    return thing;
  }

  /** A body as a shape. */
  keep(body: Manifold): Shape {
    this.track(body);
    if (body.status() !== 'NoError') throw new BrokenPromise(`A body came out broken (${body.status()}).`);
    return new Shape(body, this);
  }

  /** Upright walls along outlines: material where an odd number of them lies round a place. [mm] */
  prism(outlines: readonly Outline[], [from, to]: Span): Shape {
    const section = this.track(
      new this.kernel.CrossSection(
        outlines.map((outline) => outline.map(([x, y]) => [x, y] as [number, number])),
        'EvenOdd',
      ),
    );
    return this.keep(this.kernel.Manifold.extrude(section, to - from)).moved(0, 0, from);
  }

  /** Box between two planes along each axis. [mm] */
  box(x: Span, y: Span, z: Span): Shape {
    const size = [x, y, z].map(([from, to]) => to - from) as [number, number, number];
    return this.keep(this.kernel.Manifold.cube(size)).moved(x[0], y[0], z[0]);
  }

  /** Upright cylinder. [mm] */
  cylinder(radiusMm: number, height: Span, middle: Place = [0, 0]): Shape {
    return this.prism([circleOutline(radiusMm, middle)], height);
  }

  /** A profile turned once round the z axis; its x is the radius, its y the height. [mm] */
  turnedProfile(profile: Outline, largestRadiusMm: number): Shape {
    const sides = circleOutline(largestRadiusMm).length;
    const step = (2 * Math.PI) / sides;
    // The same area-true circle as everywhere, so that walls made either way meet.
    const stretch = Math.sqrt(step / Math.sin(step));
    const section = this.track(
      new this.kernel.CrossSection(
        [profile.map(([radius, height]) => [radius * stretch, height] as [number, number])],
        'EvenOdd',
      ),
    );
    return this.keep(this.kernel.Manifold.revolve(section, sides));
  }

  /** Several bodies as one. n ≥ 1 */
  union(shapes: readonly [Shape, ...Shape[]]): Shape {
    const [first, ...rest] = shapes;
    return rest.length === 0 ? first : first.plus(...rest);
  }

  /** Frees every body made so far. */
  free(): void {
    for (const object of this.#objects.splice(0)) object.delete();
  }
}

/**
 * Runs work with a kit of shapes and frees all of them afterwards; only meshes leave.
 *
 * @param work - Builds parts; must not keep any shape.
 */
export async function withShapes<Result>(work: (kit: ShapeKit) => Result): Promise<Result> {
  const kit = new ShapeKit(await solidKernel());
  try {
    return work(kit);
  } finally {
    kit.free();
  }
}
