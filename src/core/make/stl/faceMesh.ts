import { rowCount, type PolarGrid, type Sheet } from '../../disc/index.ts';
import { BrokenPromise } from '../../error/index.ts';
import type { Degrees } from '../../units/index.ts';
import { circlesOf, type Circle, type Lie } from './circles.ts';
import { placesOf, type SideKind } from './places.ts';

/** The face of a flat part: triangles turning against the clock, and its border with what is higher on the left. */
export interface FaceMesh {
  /** x of each vertex, exact in 32 bits. [mm] */
  readonly xMm: Float32Array;
  /** y of each vertex, exact in 32 bits. [mm] */
  readonly yMm: Float32Array;
  /** Three vertices a triangle. */
  readonly triangles: readonly number[];
  /** Height of each triangle, as the grid's cells have it. n = triangles / 3 */
  readonly heights: readonly number[];
  /** Two vertices a side, from and to. */
  readonly border: readonly number[];
  /** Two heights a side: lower on its right, higher on its left. n = border */
  readonly steps: readonly number[];
}

/** Vertices in order along one side of a strip. */
interface Rail {
  readonly vertices: readonly number[];
  readonly anglesDeg: readonly Degrees[];
}

/** Builds the face of a disc ring by ring. */
class FaceBuilder {
  readonly triangles: number[] = [];
  readonly heights: number[] = [];
  readonly border: number[] = [];
  readonly steps: number[] = [];
  readonly kinds: SideKind[] = [];
  readonly #circles: readonly Circle[];
  readonly #grid: PolarGrid;
  readonly #firsts: number[];

  constructor(circles: readonly Circle[], grid: PolarGrid) {
    this.#circles = circles;
    this.#grid = grid;
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
  fill(inner: Rail, outer: Rail, height: number): void {
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
      this.heights.push(height);
    }
  }

  #addSide(from: number, to: number, kind: SideKind, low: number, high: number): void {
    this.border.push(from, to);
    this.steps.push(low, high);
    this.kinds.push(kind);
  }

  /** Height of a cell, round the turn; 0 beyond the grid. */
  heightAt(row: number, column: number): number {
    const columns = this.#grid.anglesDeg.length;
    if (row < 0 || row >= rowCount(this.#grid)) return 0;
    return this.#grid.filled[row * columns + ((column + columns) % columns)]!;
  }

  /** A ring of one height all the way round. */
  fillRing(row: number): void {
    const inner = this.rail(row, 0, 0);
    const { anglesDeg } = this.#circles[row + 1]!;
    const start = inner.anglesDeg[0]!;
    const apart = anglesDeg.map((angle) => Math.abs(((angle - start + 540) % 360) - 180));
    const nearest = apart.indexOf(Math.min(...apart));
    const outer = this.rail(row + 1, nearest, nearest);
    const turns = Math.round((start - outer.anglesDeg[0]!) / 360) * 360;
    this.fill(
      inner,
      { ...outer, anglesDeg: outer.anglesDeg.map((angle) => angle + turns) },
      this.heightAt(row, 0),
    );
  }

  /** One height of a row from one column to another, and its straight edges towards what is lower. */
  fillSector(row: number, from: number, to: number): void {
    const [inner, outer] = [row, row + 1].map((circle) => {
      const { atColumn } = this.#circles[circle]!;
      return this.rail(circle, atColumn[from]!, atColumn[to]!);
    }) as [Rail, Rail];
    const turns = inner.anglesDeg[0]! - outer.anglesDeg[0]!;
    const height = this.heightAt(row, from);
    this.fill(inner, { ...outer, anglesDeg: outer.anglesDeg.map((angle) => angle + turns) }, height);
    const [before, after] = [this.heightAt(row, from - 1), this.heightAt(row, to)];
    if (before < height)
      this.#addSide(outer.vertices[0]!, inner.vertices[0]!, 'starting-line', before, height);
    if (after < height)
      this.#addSide(inner.vertices.at(-1)!, outer.vertices.at(-1)!, 'ending-line', after, height);
  }

  /** Every row: whole rings, or runs of one height. */
  fillRow(row: number): void {
    const columns = this.#grid.anglesDeg.length;
    let isWhole = true;
    for (let column = 0; column < columns; column++) {
      if (this.heightAt(row, column) === this.heightAt(row, column - 1)) continue;
      isWhole = false;
      let end = column + 1;
      while (this.heightAt(row, end) === this.heightAt(row, column)) end++;
      if (this.heightAt(row, column) > 0) this.fillSector(row, column, end % columns);
    }
    if (isWhole && this.heightAt(row, 0) > 0) this.fillRing(row);
  }

  /** The arcs of a circle along which a height ends. */
  borderCircle(circle: number): void {
    const { borders, columns } = this.#circles[circle]!;
    for (const [index, border] of borders.entries()) {
      if (border === 'none') continue;
      const here = this.#firsts[circle]! + index;
      const next = this.#firsts[circle]! + ((index + 1) % borders.length);
      const heights = [this.heightAt(circle - 1, columns[index]!), this.heightAt(circle, columns[index]!)];
      const [low, high] = [Math.min(...heights), Math.max(...heights)];
      if (border === 'edge-of-outer') this.#addSide(here, next, 'inner-arc', low, high);
      else this.#addSide(next, here, 'outer-arc', low, high);
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
 * @param grid - Material of the disc; cells may hold heights, 0 for air.
 * @param lie - Bore and sheet on which it lies. [mm]
 * @param outMm - How far every side of the border is moved out of what is higher. [mm]
 * @returns The mesh, seen from the patterned face, y up. [mm]
 * @check test/journeys/discFilesSolid.test.ts (admesh, and rays counted by separate code)
 */
export function faceMesh(
  grid: PolarGrid,
  { bore, sheet }: Pick<Lie, 'bore'> & { readonly sheet: Sheet },
  outMm = 0,
): FaceMesh {
  const circles = circlesOf(grid, { bore, isUnrolled: sheet.isUnrolled });
  const builder = new FaceBuilder(circles, grid);
  for (let row = 0; row < rowCount(grid); row++) builder.fillRow(row);
  for (let circle = 0; circle < circles.length; circle++) builder.borderCircle(circle);
  const { triangles, heights, border, steps, kinds } = builder;
  const places = placesOf(circles, { border, kinds }, sheet, outMm);
  const mesh: FaceMesh = { ...places, triangles, heights, border, steps };
  assertTurning(mesh);
  return mesh;
}
