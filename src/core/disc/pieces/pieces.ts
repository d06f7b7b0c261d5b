import type { PolarGrid } from './polarGrid.ts';
import { rowCount } from './polarGrid.ts';

/** Label of an open cell. */
const OPEN = -1;

/** Cells joined into pieces: each cell points towards the lowest cell of its piece. */
class Joined {
  readonly #towards: Int32Array;

  constructor(filled: Uint8Array) {
    this.#towards = Int32Array.from(filled, (isFilled, cell) => (isFilled ? cell : OPEN));
  }

  lowest(cell: number): number {
    const towards = this.#towards;
    let at = cell;
    while (towards[at] !== at) {
      towards[at] = towards[towards[at]!]!;
      at = towards[at]!;
    }
    return at;
  }

  join(a: number, b: number): void {
    if (this.#towards[a] === OPEN || this.#towards[b] === OPEN) return;
    const [low, high] = [this.lowest(a), this.lowest(b)].sort((x, y) => x - y);
    this.#towards[high!] = low!;
  }

  labels(): Int32Array {
    return this.#towards.map((towards, cell) => (towards === OPEN ? OPEN : this.lowest(cell)));
  }
}

/**
 * Which piece each cell belongs to: cells that share an edge are one piece, cells that meet at a corner are not.
 *
 * @returns Label of each cell, the lowest cell index of its piece; -1 where open. Label 0 is the hub's piece.
 * @check test/journeys/discFilesRandom.test.ts (pieces counted by a flood fill of its own)
 */
export function pieceLabels(grid: PolarGrid): Int32Array {
  const columns = grid.anglesDeg.length;
  const joined = new Joined(grid.filled);
  for (let row = 0; row < rowCount(grid); row++) {
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column;
      joined.join(cell, row * columns + ((column + 1) % columns));
      if (row + 1 < rowCount(grid)) joined.join(cell, cell + columns);
    }
  }
  return joined.labels();
}

/** Label of the piece that holds the hub, and so the shaft. */
export const HELD = 0;
