import duckdb, { type Vector } from '@duckdb/node-bindings';
import { DuckDBDataChunk, type DuckDBType } from '@duckdb/node-api';

/** Rows of one chunk of the engine. [-] */
export const CHUNK_ROWS = 2048;

type Numbers = Float64Array<ArrayBuffer> | Uint32Array<ArrayBuffer> | Int32Array<ArrayBuffer>;

/**
 * One column of a chunk: numbers and which of them are there.
 *
 * The package's own way in sets each value through a large integer; laying the memory out here is many times faster.
 */
export class ColumnBuffer {
  readonly #values: Numbers;
  readonly #width: 1 | 2;
  readonly #there = new Uint32Array(CHUNK_ROWS / 32);

  /** @param kind - Of the engine: `bigint` takes whole numbers below 2^53. */
  constructor(kind: 'double' | 'uinteger' | 'integer' | 'bigint') {
    this.#width = kind === 'bigint' ? 2 : 1;
    this.#values =
      kind === 'double'
        ? new Float64Array(CHUNK_ROWS)
        : kind === 'integer'
          ? new Int32Array(CHUNK_ROWS)
          : new Uint32Array(CHUNK_ROWS * this.#width);
  }

  set(row: number, value: number | null): void {
    const bit = 1 << (row & 31);
    if (value === null) {
      this.#there[row >> 5]! &= ~bit;
      return;
    }
    this.#there[row >> 5]! |= bit;
    if (this.#width === 1) {
      this.#values[row] = value;
      return;
    }
    const high = Math.floor(value / 2 ** 32);
    this.#values[2 * row] = value - high * 2 ** 32;
    this.#values[2 * row + 1] = high;
  }

  copyTo(vector: Vector, rows: number): void {
    const bytes = rows * this.#width * this.#values.BYTES_PER_ELEMENT;
    duckdb.copy_data_to_vector(vector, 0, this.#values.buffer, 0, bytes);
    duckdb.vector_ensure_validity_writable(vector);
    duckdb.copy_data_to_vector_validity(vector, 0, this.#there.buffer, 0, Math.ceil(rows / 64) * 8);
  }
}

/** A chunk of the first `rows` rows of columns. */
export function chunkOf(
  types: readonly DuckDBType[],
  columns: readonly ColumnBuffer[],
  rows: number,
): DuckDBDataChunk {
  const chunk = DuckDBDataChunk.create(types as DuckDBType[], rows);
  for (const [i, column] of columns.entries()) {
    column.copyTo(duckdb.data_chunk_get_vector(chunk.chunk, i), rows);
  }
  return chunk;
}

/** A column of numbers of a chunk that was read; a copy, since the chunk's memory goes away. [as stored] */
export function doublesOf(chunk: DuckDBDataChunk, column: number): Float64Array {
  const { rowCount } = chunk;
  const vector = duckdb.data_chunk_get_vector(chunk.chunk, column);
  const bytes = duckdb.vector_get_data(vector, rowCount * 8);
  return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + rowCount * 8));
}
