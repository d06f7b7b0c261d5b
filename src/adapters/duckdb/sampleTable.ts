import { BIGINT, DOUBLE, INTEGER, UINTEGER, type DuckDBAppender, type DuckDBType } from '@duckdb/node-api';
import type { Sample } from '../../core/record/index.ts';
import { CHUNK_ROWS, chunkOf, ColumnBuffer } from './columnBuffer.ts';

/** Numbers that stand for texts of a sample. */
export interface Ids {
  station(name: string): number;
  word(digits: string): number;
}

interface Column {
  readonly name: string;
  readonly kind: 'double' | 'uinteger' | 'integer' | 'bigint';
  value(sample: Sample, ids: Ids): number | null;
}

/** Columns of the table of samples, in order; docs/record.md lists them. */
const columns: readonly Column[] = [
  { name: 'station_id', kind: 'integer', value: ({ station }, ids) => ids.station(station) },
  { name: 'at_ms', kind: 'bigint', value: ({ atMs }) => atMs },
  { name: 'within_ms', kind: 'double', value: ({ withinMs }) => withinMs },
  { name: 'heading_deg', kind: 'double', value: ({ headingDeg }) => headingDeg },
  { name: 'half_width_deg', kind: 'double', value: ({ halfWidthDeg }) => halfWidthDeg },
  { name: 'mean_heading_deg', kind: 'double', value: ({ meanHeadingDeg }) => meanHeadingDeg },
  { name: 'agreement', kind: 'double', value: ({ agreement }) => agreement },
  { name: 'speed_m_per_s', kind: 'double', value: ({ speedMPerS }) => speedMPerS },
  { name: 'gust_m_per_s', kind: 'double', value: ({ gustMPerS }) => gustMPerS },
  { name: 'flags', kind: 'integer', value: ({ flags }) => flags },
  { name: 'word_id', kind: 'integer', value: ({ word }, ids) => (word === null ? null : ids.word(word)) },
  { name: 'pulses', kind: 'uinteger', value: ({ pulses }) => pulses },
  { name: 'edges', kind: 'uinteger', value: ({ edges }) => edges },
  { name: 'stream', kind: 'bigint', value: ({ stream }) => stream },
  { name: 'line', kind: 'bigint', value: ({ line }) => line },
];

const types: Readonly<Record<Column['kind'], DuckDBType>> = {
  double: DOUBLE,
  uinteger: UINTEGER,
  integer: INTEGER,
  bigint: BIGINT,
};

/** What makes the tables, each only where it is missing. */
export const schema: readonly string[] = [
  'CREATE TABLE IF NOT EXISTS layout (version INTEGER)',
  'CREATE TABLE IF NOT EXISTS station (id INTEGER, name VARCHAR)',
  'CREATE TABLE IF NOT EXISTS word (id INTEGER, digits VARCHAR)',
  `CREATE TABLE IF NOT EXISTS sample (${columns.map(({ name, kind }) => `${name} ${kind}`).join(', ')})`,
  'CREATE TABLE IF NOT EXISTS ledger (log VARCHAR, stream BIGINT, reason VARCHAR, from_line BIGINT, to_line BIGINT, count BIGINT, got VARCHAR)',
  'CREATE TABLE IF NOT EXISTS progress (log VARCHAR, seq BIGINT, state VARCHAR)',
];

/** Buffers for one chunk of samples, used again and again. */
export class SampleChunk {
  readonly #buffers = columns.map(({ kind }) => new ColumnBuffer(kind));
  readonly #types = columns.map(({ kind }) => types[kind]);

  /** Appends samples, a chunk at a time. */
  append(appender: DuckDBAppender, samples: readonly Sample[], ids: Ids): void {
    for (let from = 0; from < samples.length; from += CHUNK_ROWS) {
      const rows = Math.min(CHUNK_ROWS, samples.length - from);
      for (const [c, { value }] of columns.entries()) {
        const buffer = this.#buffers[c]!;
        for (let i = 0; i < rows; i++) buffer.set(i, value(samples[from + i]!, ids));
      }
      appender.appendDataChunk(chunkOf(this.#types, this.#buffers, rows));
    }
  }
}
