import {
  boreCircleMm,
  boreSides,
  columnSpanDeg,
  rowCount,
  type Bore,
  type PolarGrid,
} from '../../disc/index.ts';
import { radToDeg, type Degrees } from '../../units/index.ts';

/** What lies on the two sides of a stretch of a circle. */
export type Border = 'edge-of-outer' | 'edge-of-inner' | 'none';

/** The vertices on one circle of the grid, clockwise. */
export interface Circle {
  readonly radiusMm: number;
  /** Ascending from the first corner on; may pass 360. [deg], n ≥ 3 */
  readonly anglesDeg: readonly Degrees[];
  /** Border between each vertex and the next, the last one's to the first. */
  readonly borders: readonly Border[];
  /** Grid column that lies beyond each vertex. */
  readonly columns: readonly number[];
  /** Vertex of the corner at a grid column, or -1. */
  readonly atColumn: Int32Array;
}

/** Farthest a straight side may lie from its arc. [mm] @source a tenth of the finest place a hobby machine holds. */
const CHORD_MM = 0.01;

/** The same as a share of the radius: keeps the volume of small discs true. [-] */
const CHORD_SHARE = 1 / 5000;

/** Share of a ring's width that the sides of its circles may cut into it, so that its triangles keep their turn. [-] */
const RING_SHARE = 1 / 8;

/** Longest side inside the material, where no arc has to be followed. [deg] */
const LONGEST_SIDE_DEG = 45;

/** A stretch of a circle between two corners. */
interface Stretch {
  readonly fromDeg: Degrees;
  readonly spanDeg: Degrees;
  readonly border: Border;
  readonly isStraight: boolean;
  /** Grid column at which it begins. */
  readonly column: number;
}

interface Vertices {
  readonly circle: Omit<Circle, 'atColumn'>;
  readonly firsts: readonly number[];
}

/** Longest side whose middle lies within a distance of its arc. [deg] @source sagitta = r (1 - cos(side / 2)). */
function sideDeg(radius: number, sagitta: number): Degrees {
  return radToDeg(2 * Math.acos(Math.max(0, 1 - sagitta / radius)));
}

/** Vertices along the stretches of a circle, and the first vertex of each. */
function verticesOf(stretches: readonly Stretch[], radiusMm: number, ringMm: number): Vertices {
  const inside = Math.min(LONGEST_SIDE_DEG, sideDeg(radiusMm, ringMm * RING_SHARE));
  const border = Math.min(inside, sideDeg(radiusMm, Math.min(CHORD_MM, radiusMm * CHORD_SHARE)));
  const anglesDeg: Degrees[] = [];
  const borders: Border[] = [];
  const columns: number[] = [];
  const firsts: number[] = [];
  for (const stretch of stretches) {
    firsts.push(anglesDeg.length);
    const longest = stretch.border === 'none' ? inside : border;
    const sides = stretch.isStraight ? 1 : Math.ceil(stretch.spanDeg / longest - 1e-9);
    for (let side = 0; side < sides; side++) {
      anglesDeg.push(stretch.fromDeg + (stretch.spanDeg * side) / sides);
      borders.push(stretch.border);
      columns.push(stretch.column);
    }
  }
  return { circle: { radiusMm, anglesDeg, borders, columns }, firsts };
}

/** The bore's outline as a circle whose flat is one straight side. */
/** How the vertices of a grid lie: on circles about the axis, or on straight lines of a strip. */
export interface Lie {
  /** Hole on the shaft; `null` where nothing lies round it. */
  readonly bore: Bore | null;
  readonly isUnrolled: boolean;
}

function boreCircle(bore: Bore, grid: PolarGrid): Circle {
  const sides = boreSides(bore).map(({ fromDeg, spanDeg, isFlat }): Stretch => ({
    fromDeg,
    spanDeg,
    border: 'edge-of-outer',
    isStraight: isFlat,
    column: 0,
  }));
  const ring = grid.radiiMm[1]! - grid.radiiMm[0]!;
  const atColumn = new Int32Array(grid.anglesDeg.length).fill(-1);
  const { circle } = verticesOf(sides, boreCircleMm(bore) / 2, ring);
  return { ...circle, atColumn };
}

function borderAt(grid: PolarGrid, circle: number, column: number): Border {
  const columns = grid.anglesDeg.length;
  const inner = circle > 0 ? grid.filled[(circle - 1) * columns + column]! : 0;
  const outer = circle < rowCount(grid) ? grid.filled[circle * columns + column]! : 0;
  if (inner === outer) return 'none';
  return outer > inner ? 'edge-of-outer' : 'edge-of-inner';
}

/** Columns at which a straight edge along a radius touches a circle. */
function cornersOn(grid: PolarGrid, circle: number): number[] {
  const columns = grid.anglesDeg.length;
  const changes = (row: number, column: number) =>
    row >= 0 &&
    row < rowCount(grid) &&
    grid.filled[row * columns + column] !== grid.filled[row * columns + ((column + columns - 1) % columns)];
  const corners: number[] = [];
  for (let column = 0; column < columns; column++) {
    if (changes(circle - 1, column) || changes(circle, column)) corners.push(column);
  }
  return corners;
}

function gridCircle(grid: PolarGrid, circle: number, isUnrolled: boolean): Circle {
  const columns = grid.anglesDeg.length;
  const radii = grid.radiiMm;
  const radiusMm = radii[circle]!;
  const outerRing = circle < rowCount(grid) ? radii[circle + 1]! - radiusMm : Infinity;
  const innerRing = circle > 0 ? radiusMm - radii[circle - 1]! : Infinity;
  const ring = Math.min(innerRing, outerRing);
  const corners = cornersOn(grid, circle);
  const starts = corners.length > 0 ? corners : [0];
  const stretches = starts.map((column, i): Stretch => {
    const next = starts[i + 1] ?? starts[0]! + columns;
    let spanDeg = 0;
    for (let crossed = column; crossed < next; crossed++) spanDeg += columnSpanDeg(grid, crossed % columns);
    return {
      fromDeg: grid.anglesDeg[column]!,
      spanDeg,
      border: borderAt(grid, circle, column),
      isStraight: isUnrolled,
      column,
    };
  });
  const vertices = verticesOf(stretches, radiusMm, ring);
  const atColumn = new Int32Array(columns).fill(-1);
  for (const [i, column] of corners.entries()) atColumn[column] = vertices.firsts[i]!;
  return { ...vertices.circle, atColumn };
}

/**
 * Vertices on every circle of a disc's grid: a corner wherever a straight edge meets the circle, and enough between
 * corners to follow each arc.
 *
 * @param grid - Material of the disc; cells may hold heights, 0 for air.
 * @param lie - The bore, where row 0 lies all round it: it takes the place of the innermost circle. [mm]
 * @returns Circles from the bore outwards. n = rows + 1
 */
export function circlesOf(grid: PolarGrid, { bore, isUnrolled }: Lie): Circle[] {
  const first = bore ? boreCircle(bore, grid) : gridCircle(grid, 0, isUnrolled);
  return [first, ...grid.radiiMm.slice(1).map((_, index) => gridCircle(grid, index + 1, isUnrolled))];
}
