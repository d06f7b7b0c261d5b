import type { Degrees } from '../../units/index.ts';
import { columnSpanDeg, rowCount, type PolarGrid } from '../pieces/polarGrid.ts';

/** One side of an outline: an arc about the axis, or a line along a radius. */
export type Side =
  /** `turnDeg` is above 0 clockwise; ±360 is a whole circle. [deg] */
  | { readonly kind: 'arc'; readonly radiusMm: number; readonly fromDeg: Degrees; readonly turnDeg: Degrees }
  | { readonly kind: 'line'; readonly angleDeg: Degrees; readonly fromMm: number; readonly toMm: number };

/** A closed outline with the material on its left; sides in order, the first an arc. */
export type Outline = readonly Side[];

/** Ways to leave a corner of the grid, each the left turn of the one before; the fourth is inward. */
const CLOCKWISE = 0;
const OUTWARD = 1;
const ANTICLOCKWISE = 2;
type Way = 0 | 1 | 2 | 3;

interface Corner {
  readonly circle: number;
  readonly column: number;
}

/** What lies inside the innermost circle of a grid: material, where the bore is drawn by itself, or nothing. */
export type GridInside = 'material' | 'nothing';

/** Walks the edges between material and air, each once. */
class EdgeWalk {
  readonly #grid: PolarGrid;
  readonly #columns: number;
  readonly #walkedArcs: Uint8Array;

  readonly #inside: GridInside;

  constructor(grid: PolarGrid, inside: GridInside) {
    this.#grid = grid;
    this.#inside = inside;
    this.#columns = grid.anglesDeg.length;
    this.#walkedArcs = new Uint8Array(grid.radiiMm.length * this.#columns);
  }

  /** What lies below row 0 is told; nothing beyond the rim. */
  #isMaterial(row: number, column: number): boolean {
    if (row < 0) return this.#inside === 'material';
    if (row >= rowCount(this.#grid)) return false;
    return this.#grid.filled[row * this.#columns + column] === 1;
  }

  #before(column: number): number {
    return (column + this.#columns - 1) % this.#columns;
  }

  /** True when an edge leaves the corner that way with material on its left and air on its right. */
  #leaves({ circle, column }: Corner, way: Way): boolean {
    const before = this.#before(column);
    // Each way runs between two cells: the one on its left, then the one on its right.
    if (way === CLOCKWISE) return this.#isMaterial(circle, column) && !this.#isMaterial(circle - 1, column);
    if (way === OUTWARD) return this.#isMaterial(circle, before) && !this.#isMaterial(circle, column);
    if (way === ANTICLOCKWISE)
      return this.#isMaterial(circle - 1, before) && !this.#isMaterial(circle, before);
    return this.#isMaterial(circle - 1, column) && !this.#isMaterial(circle - 1, before);
  }

  #step({ circle, column }: Corner, way: Way): { to: Corner; side: Side } {
    const { anglesDeg, radiiMm } = this.#grid;
    if (way === CLOCKWISE || way === ANTICLOCKWISE) {
      const crossed = way === CLOCKWISE ? column : this.#before(column);
      this.#walkedArcs[circle * this.#columns + crossed] = 1;
      const to = { circle, column: way === CLOCKWISE ? (column + 1) % this.#columns : crossed };
      const turnDeg = columnSpanDeg(this.#grid, crossed) * (way === CLOCKWISE ? 1 : -1);
      return { to, side: { kind: 'arc', radiusMm: radiiMm[circle]!, fromDeg: anglesDeg[column]!, turnDeg } };
    }
    const to = { circle: circle + (way === OUTWARD ? 1 : -1), column };
    const line = { angleDeg: anglesDeg[column]!, fromMm: radiiMm[circle]!, toMm: radiiMm[to.circle]! };
    return { to, side: { kind: 'line', ...line } };
  }

  /** The outline through an arc not walked yet, or `null` when there is none there. */
  outlineThrough(circle: number, column: number): Outline | null {
    const below = this.#isMaterial(circle - 1, column);
    if (below === this.#isMaterial(circle, column)) return null;
    if (this.#walkedArcs[circle * this.#columns + column]) return null;
    const start = below ? { circle, column: (column + 1) % this.#columns } : { circle, column };
    const firstWay = below ? ANTICLOCKWISE : CLOCKWISE;
    const sides: Side[] = [];
    let at: Corner = start;
    let way: Way = firstWay;
    do {
      const { to, side } = this.#step(at, way);
      sides.push(side);
      at = to;
      // Left first: where material meets material at a corner only, each keeps to its own.
      const came: Way = way;
      way = ([1, 0, 3] as const)
        .map((turn) => ((came + turn) % 4) as Way)
        .find((next) => this.#leaves(to, next))!;
    } while (at.circle !== start.circle || at.column !== start.column || way !== firstWay);
    return joinSides(sides);
  }
}

/** Two sides as one, when the second carries on where the first ends. */
function joined(first: Side, second: Side): Side | null {
  if (first.kind === 'arc' && second.kind === 'arc' && first.turnDeg > 0 === second.turnDeg > 0) {
    return { ...first, turnDeg: first.turnDeg + second.turnDeg };
  }
  if (first.kind === 'line' && second.kind === 'line') return { ...first, toMm: second.toMm };
  return null;
}

/** As few sides as the outline needs, beginning with an arc that follows a corner. */
function joinSides(sides: readonly Side[]): Outline {
  const few: Side[] = [];
  for (const side of sides) {
    const longer = few.length > 0 ? joined(few.at(-1)!, side) : null;
    if (longer) few[few.length - 1] = longer;
    else few.push(side);
  }
  const round = few.length > 1 ? joined(few.at(-1)!, few[0]!) : null;
  if (!round) return few;
  return [round, ...few.slice(1, -1)];
}

/**
 * Every outline of a grid's material but the bore's, each with the fewest arcs and lines.
 *
 * @param grid - Material of the disc.
 * @param inside - What lies inside its innermost circle.
 * @returns Outlines from the axis outwards, clockwise from disc angle 0; those at the outer edge first.
 */
export function outlinesOf(grid: PolarGrid, inside: GridInside = 'material'): Outline[] {
  const walk = new EdgeWalk(grid, inside);
  const outlines: Outline[] = [];
  const scan = (circle: number): void => {
    for (let column = 0; column < grid.anglesDeg.length; column++) {
      const outline = walk.outlineThrough(circle, column);
      if (outline) outlines.push(outline);
    }
  };
  scan(rowCount(grid));
  for (let circle = 0; circle < rowCount(grid); circle++) scan(circle);
  return outlines;
}
