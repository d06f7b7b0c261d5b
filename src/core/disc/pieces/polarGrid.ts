import { degToRad, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { RingSector } from '../discSpec.ts';

/**
 * A ring cut along every radius and every angle at which anything on it begins or ends, so that each cell
 * is wholly material or wholly open. Exact: no sampling.
 *
 * Cell (row, column) lies between `radiiMm[row]` and the next, and between `anglesDeg[column]` and the next,
 * the last column between the last angle and the first.
 */
export interface PolarGrid {
  /** Ascending. [mm], n = rows + 1 */
  readonly radiiMm: readonly number[];
  /** Ascending. [deg], [0, 360), n = columns ≥ 1 */
  readonly anglesDeg: readonly Degrees[];
  /** 1 = material, 0 = open; cell at row * columns + column. */
  readonly filled: Uint8Array;
  /** Length of each degree where the ring is unrolled into a strip; arcs about the axis where left out. [mm/deg] */
  readonly mmPerDeg?: number;
}

/** Closer than this, two angles are one: far above rounding, far below any tool. [deg] */
const SAME_DEG = 1e-5;

/** Closer than this, two radii are one. [mm] */
const SAME_MM = 1e-6;

/** Ascending values without repeats. */
function distinct(values: readonly number[], same: number): number[] {
  const kept: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    if (kept.length === 0 || value - kept.at(-1)! > same) kept.push(value);
  }
  return kept;
}

/** Index of the kept value that stands for this one. */
function indexOf(kept: readonly number[], value: number, same: number): number {
  let low = 0;
  let high = kept.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (kept[middle]! < value - same) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Angle in [0, 360); a hair below 360 counts as 0. */
function onTurn(angle: Degrees): Degrees {
  const wrapped = wrapDegrees(angle);
  return wrapped > 360 - SAME_DEG ? 0 : wrapped;
}

/**
 * The grid of a ring with openings cut into it and fillings put back.
 *
 * @param ring - Where material may be. [mm]
 * @param openings - Sectors cut out.
 * @param fillings - Sectors of material laid over the openings.
 */
export function polarGrid(
  ring: { readonly innerRadiusMm: number; readonly outerRadiusMm: number },
  openings: readonly RingSector[],
  fillings: readonly RingSector[],
): PolarGrid {
  const sectors = [...openings, ...fillings];
  const radiiMm = distinct(
    [ring, ...sectors].flatMap((part) => [part.innerRadiusMm, part.outerRadiusMm]),
    SAME_MM,
  );
  const edges = distinct(
    sectors.flatMap(({ fromDeg, toDeg }) => [onTurn(fromDeg), onTurn(toDeg)]),
    SAME_DEG,
  );
  const anglesDeg = edges.length > 0 ? edges : [0];
  const grid = {
    radiiMm,
    anglesDeg,
    filled: new Uint8Array((radiiMm.length - 1) * anglesDeg.length).fill(1),
  };
  for (const opening of openings) mark(grid, opening, 0);
  for (const filling of fillings) mark(grid, filling, 1);
  return grid;
}

/** True where a sector goes all the way round, but for rounding. */
export function isWholeRing({ fromDeg, toDeg }: Pick<RingSector, 'fromDeg' | 'toDeg'>): boolean {
  return toDeg - fromDeg > 360 - SAME_DEG;
}

/** Makes every cell of a sector material or open. */
function mark(grid: PolarGrid, sector: RingSector, value: 0 | 1): void {
  const columns = grid.anglesDeg.length;
  const first = columnFrom(grid, sector.fromDeg);
  const span = isWholeRing(sector) ? columns : (columnFrom(grid, sector.toDeg) - first + columns) % columns;
  const lastRow = rowFrom(grid, sector.outerRadiusMm);
  for (let row = rowFrom(grid, sector.innerRadiusMm); row < lastRow; row++) {
    for (let step = 0; step < span; step++) grid.filled[row * columns + ((first + step) % columns)] = value;
  }
}

/** Rows of a grid. [-] */
export function rowCount(grid: PolarGrid): number {
  return grid.radiiMm.length - 1;
}

/** Length of a stretch along a circle of the grid. [mm] */
export function alongMm({ mmPerDeg }: PolarGrid, radiusMm: number, spanDeg: Degrees): number {
  return mmPerDeg === undefined ? radiusMm * degToRad(spanDeg) : mmPerDeg * spanDeg;
}

/** Angle a column covers. [deg] */
export function columnSpanDeg(grid: PolarGrid, column: number): Degrees {
  const { anglesDeg } = grid;
  const next = column + 1 < anglesDeg.length ? anglesDeg[column + 1]! : anglesDeg[0]! + 360;
  return next - anglesDeg[column]!;
}

/** Index of the row that begins at a radius, or of the ring's end. [-] */
export function rowFrom(grid: PolarGrid, radiusMm: number): number {
  return indexOf(grid.radiiMm, radiusMm, SAME_MM);
}

/** Index of the column that begins at an angle; the angle must be one of the grid's. [-] */
export function columnFrom(grid: PolarGrid, angle: Degrees): number {
  return indexOf(grid.anglesDeg, onTurn(angle), SAME_DEG);
}
