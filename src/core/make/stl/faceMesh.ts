import { rowCount, sheetPoint, type Bore, type PolarGrid } from '../../disc/index.ts';
import { BrokenPromise } from '../../error/index.ts';
import type { Degrees } from '../../units/index.ts';
import { circlesOf, type Circle } from './circles.ts';

/** The face of a flat part: triangles turning against the clock, and its border with the material on the left. */
export interface FaceMesh {
  /** x of each vertex, exact in 32 bits. [mm] */
  readonly xMm: Float32Array;
  /** y of each vertex, exact in 32 bits. [mm] */
  readonly yMm: Float32Array;
  /** Three vertices a triangle. */
  readonly triangles: readonly number[];
  /** Two vertices a side, from and to. */
  readonly border: readonly number[];
}

/** Vertices in order along one side of a strip. */
interface Rail {
  readonly vertices: readonly number[];
  readonly anglesDeg: readonly Degrees[];
}

/** Builds the face of a disc ring by ring. */
class FaceBuilder {
  readonly triangles: number[] = [];
  readonly border: number[] = [];
  readonly #circles: readonly Circle[];
  readonly #firsts: number[];

  constructor(circles: readonly Circle[]) {
    this.#circles = circles;
    let vertices = 0;
    this.#firsts = circles.map(({ anglesDeg }) => (vertices += anglesDeg.length) - anglesDeg.length);
  }

  /** Vertices of a circle from one to another, clockwise, the last included; a whole turn when they are the same. */
  rail(circle: number, from: number, to: number): Rail {
    const { anglesDeg } = this.#circles[circle]!;
    const count = anglesDeg.length;
    const steps = to > from ? to - from : to - from + count;
    const indices = Array.from({ length: steps + 1 }, (_, step) => from + step);
    return {
      vertices: indices.map((index) => this.#firsts[circle]! + (index % count)),
      anglesDeg: indices.map((index) => anglesDeg[index % count]! + (index >= count ? 360 : 0)),
    };
  }

  /** Fills the strip between an inner and an outer rail, always crossing at the nearer side. */
  fill(inner: Rail, outer: Rail): void {
    let i = 0;
    let o = 0;
    const lastInner = inner.vertices.length - 1;
    const lastOuter = outer.vertices.length - 1;
    while (i < lastInner || o < lastOuter) {
      const isInnerNext =
        o === lastOuter ||
        (i < lastInner &&
          inner.anglesDeg[i]! + inner.anglesDeg[i + 1]! <= outer.anglesDeg[o]! + outer.anglesDeg[o + 1]!);
      if (isInnerNext) this.triangles.push(inner.vertices[i]!, inner.vertices[++i]!, outer.vertices[o]!);
      else this.triangles.push(inner.vertices[i]!, outer.vertices[o + 1]!, outer.vertices[o++]!);
    }
  }

  /** A ring of material all the way round. */
  fillRing(row: number): void {
    const inner = this.rail(row, 0, 0);
    const { anglesDeg } = this.#circles[row + 1]!;
    const start = inner.anglesDeg[0]!;
    const apart = anglesDeg.map((angle) => Math.abs(((angle - start + 540) % 360) - 180));
    const nearest = apart.indexOf(Math.min(...apart));
    const outer = this.rail(row + 1, nearest, nearest);
    const turns = Math.round((start - outer.anglesDeg[0]!) / 360) * 360;
    this.fill(inner, { ...outer, anglesDeg: outer.anglesDeg.map((angle) => angle + turns) });
  }

  /** Material of one row from one column to another, and its two straight edges. */
  fillSector(row: number, from: number, to: number): void {
    const [inner, outer] = [row, row + 1].map((circle) => {
      const { atColumn } = this.#circles[circle]!;
      return this.rail(circle, atColumn[from]!, atColumn[to]!);
    }) as [Rail, Rail];
    const turns = inner.anglesDeg[0]! - outer.anglesDeg[0]!;
    this.fill(inner, { ...outer, anglesDeg: outer.anglesDeg.map((angle) => angle + turns) });
    this.border.push(outer.vertices[0]!, inner.vertices[0]!, inner.vertices.at(-1)!, outer.vertices.at(-1)!);
  }

  /** The arcs of a circle that border the material. */
  borderCircle(circle: number): void {
    const { borders } = this.#circles[circle]!;
    for (const [index, border] of borders.entries()) {
      const here = this.#firsts[circle]! + index;
      const next = this.#firsts[circle]! + ((index + 1) % borders.length);
      if (border === 'edge-of-outer') this.border.push(here, next);
      if (border === 'edge-of-inner') this.border.push(next, here);
    }
  }
}

/** Throws unless every triangle still turns against the clock once its corners are rounded to 32 bits. */
function assertTurning({ xMm, yMm, triangles }: FaceMesh): void {
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [triangles[at]!, triangles[at + 1]!, triangles[at + 2]!];
    const twice = (xMm[b]! - xMm[a]!) * (yMm[c]! - yMm[a]!) - (xMm[c]! - xMm[a]!) * (yMm[b]! - yMm[a]!);
    if (!(twice > 0)) throw new BrokenPromise('A triangle of the disc has turned over.');
  }
}

/**
 * The patterned face of a disc in triangles, built ring by ring between shared circles, so that nothing can crack.
 *
 * @param grid - Material of the disc, row 0 all round the bore.
 * @param bore - Hole on the shaft. [mm]
 * @returns The mesh, seen from the patterned face, y up. [mm]
 * @check test/journeys/discFilesSolid.test.ts (admesh, and rays counted by separate code)
 */
export function faceMesh(grid: PolarGrid, bore: Bore): FaceMesh {
  const circles = circlesOf(grid, bore);
  const builder = new FaceBuilder(circles);
  const columns = grid.anglesDeg.length;
  for (let row = 0; row < rowCount(grid); row++) {
    const isFilled = (column: number) => grid.filled[row * columns + (column % columns)] === 1;
    for (let column = 0; column < columns; column++) {
      if (!isFilled(column) || isFilled(column + columns - 1)) continue;
      let end = column;
      while (isFilled(end)) end++;
      builder.fillSector(row, column, end % columns);
    }
    if (grid.filled.subarray(row * columns, (row + 1) * columns).every((cell) => cell === 1))
      builder.fillRing(row);
  }
  for (let circle = 0; circle < circles.length; circle++) builder.borderCircle(circle);
  const places = circles.flatMap(({ radiusMm, anglesDeg }) =>
    anglesDeg.map((angle) => sheetPoint(angle, radiusMm)),
  );
  const mesh: FaceMesh = {
    xMm: Float32Array.from(places, ({ xMm }) => xMm),
    yMm: Float32Array.from(places, ({ yMm }) => yMm),
    triangles: builder.triangles,
    border: builder.border,
  };
  assertTurning(mesh);
  return mesh;
}
