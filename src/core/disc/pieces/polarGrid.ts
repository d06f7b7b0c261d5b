import { wrapDegrees, type Degrees } from '../../units/index.ts';
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
}

/** Closer than this, two angles or two radii are one: far above rounding, far below any tool. [deg or mm] */
const SAME = 1e-9;

/** Ascending values without repeats. */
function distinct(values: readonly number[]): number[] {
  const kept: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    if (kept.length === 0 || value - kept.at(-1)! > SAME) kept.push(value);
  }
  return kept;
}

/** Index of the kept value that stands for this one. */
function indexOf(kept: readonly number[], value: number): number {
  let low = 0;
  let high = kept.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (kept[middle]! < value - SAME) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Angle in [0, 360); a hair below 360 counts as 0. */
function onTurn(angle: Degrees): Degrees {
  const wrapped = wrapDegrees(angle);
  return wrapped > 360 - SAME ? 0 : wrapped;
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
  const radiiMm = distinct([ring, ...sectors].flatMap((part) => [part.innerRadiusMm, part.outerRadiusMm]));
  const edges = distinct(sectors.flatMap(({ fromDeg, toDeg }) => [onTurn(fromDeg), onTurn(toDeg)]));
  const anglesDeg = edges.length > 0 ? edges : [0];
  const columns = anglesDeg.length;
  const filled = new Uint8Array((radiiMm.length - 1) * columns).fill(1);
  const mark = (sector: RingSector, value: 0 | 1): void => {
    const first = indexOf(anglesDeg, onTurn(sector.fromDeg));
    const end = indexOf(anglesDeg, onTurn(sector.toDeg));
    const whole = sector.toDeg - sector.fromDeg > 360 - SAME;
    const span = whole ? columns : (end - first + columns) % columns;
    const lastRow = indexOf(radiiMm, sector.outerRadiusMm);
    for (let row = indexOf(radiiMm, sector.innerRadiusMm); row < lastRow; row++) {
      for (let step = 0; step < span; step++) filled[row * columns + ((first + step) % columns)] = value;
    }
  };
  for (const opening of openings) mark(opening, 0);
  for (const filling of fillings) mark(filling, 1);
  return { radiiMm, anglesDeg, filled };
}

/** Rows of a grid. [-] */
export function rowCount(grid: PolarGrid): number {
  return grid.radiiMm.length - 1;
}

/** Angle a column covers. [deg] */
export function columnSpanDeg(grid: PolarGrid, column: number): Degrees {
  const { anglesDeg } = grid;
  const next = column + 1 < anglesDeg.length ? anglesDeg[column + 1]! : anglesDeg[0]! + 360;
  return next - anglesDeg[column]!;
}

/** Index of the row that begins at a radius, or of the ring's end. [-] */
export function rowFrom(grid: PolarGrid, radiusMm: number): number {
  return indexOf(grid.radiiMm, radiusMm);
}

/** Index of the column that begins at an angle; the angle must be one of the grid's. [-] */
export function columnFrom(grid: PolarGrid, angle: Degrees): number {
  return indexOf(grid.anglesDeg, onTurn(angle));
}
