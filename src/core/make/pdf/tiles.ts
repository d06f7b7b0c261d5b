import type { Area } from './paper.ts';

/** How much of a drawing two neighbouring sheets both show. [mm] */
export const OVERLAP_MM = 10;

/** A piece of a drawing that goes on one sheet. */
export interface Tile {
  /** From the top left, counted from 1. */
  readonly row: number;
  readonly column: number;
  /** Middle of the piece, on the drawing. [mm], y up */
  readonly middle: readonly [xMm: number, yMm: number];
}

/** How a drawing is spread over sheets. */
export interface Tiling {
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
}

function stepsAlong(lengthMm: number, roomMm: number): number[] {
  const count = lengthMm <= roomMm ? 1 : Math.ceil((lengthMm - OVERLAP_MM) / (roomMm - OVERLAP_MM) - 1e-9);
  const pitch = roomMm - OVERLAP_MM;
  return Array.from({ length: count }, (_, index) => (index - (count - 1) / 2) * pitch);
}

/**
 * Sheets that a drawing at true size needs: one where it fits, else rows and columns that overlap.
 *
 * @param size - Width and height of the drawing. [mm]
 * @param middle - Its middle. [mm]
 * @param area - Room on each sheet. [mm]
 * @returns Tiles row by row from the top left. n ≥ 1
 */
export function tilingOf(
  size: readonly [widthMm: number, heightMm: number],
  middle: readonly [xMm: number, yMm: number],
  area: Pick<Area, 'widthMm' | 'heightMm'>,
): Tiling {
  const across = stepsAlong(size[0], area.widthMm);
  const down = stepsAlong(size[1], area.heightMm).reverse();
  const tiles = down.flatMap((y, row) =>
    across.map((x, column): Tile => ({
      row: row + 1,
      column: column + 1,
      middle: [middle[0] + x, middle[1] + y],
    })),
  );
  return { rows: down.length, columns: across.length, tiles };
}
