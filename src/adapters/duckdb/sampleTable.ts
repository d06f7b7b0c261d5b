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
}

/** Columns of the table of samples, in order; docs/record.md lists them. */
const columns: readonly Column[] = [
  { name: 'station_id', kind: 'integer' },
  { name: 'at_ms', kind: 'bigint' },
  { name: 'within_ms', kind: 'double' },
  { name: 'heading_deg', kind: 'double' },
  { name: 'half_width_deg', kind: 'double' },
  { name: 'mean_heading_deg', kind: 'double' },
  { name: 'agreement', kind: 'double' },
  { name: 'speed_m_per_s', kind: 'double' },
  { name: 'gust_m_per_s', kind: 'double' },
  { name: 'flags', kind: 'integer' },
  { name: 'word_id', kind: 'integer' },
  { name: 'pulses', kind: 'uinteger' },
  { name: 'edges', kind: 'uinteger' },
  { name: 'stream', kind: 'bigint' },
  { name: 'line', kind: 'bigint' },
];

/** Lays one sample into row `i` of the buffers, which stand in the order of `columns`. */
function lay(buffers: readonly ColumnBuffer[], i: number, sample: Sample, stationId: number, ids: Ids): void {
  buffers[0]!.set(i, stationId);
  buffers[1]!.set(i, sample.atMs);
  buffers[2]!.set(i, sample.withinMs);
  buffers[3]!.set(i, sample.headingDeg);
  buffers[4]!.set(i, sample.halfWidthDeg);
  buffers[5]!.set(i, sample.meanHeadingDeg);
  buffers[6]!.set(i, sample.agreement);
  buffers[7]!.set(i, sample.speedMPerS);
  buffers[8]!.set(i, sample.gustMPerS);
  buffers[9]!.set(i, sample.flags);
  buffers[10]!.set(i, sample.word === null ? null : ids.word(sample.word));
  buffers[11]!.set(i, sample.pulses);
  buffers[12]!.set(i, sample.edges);
  buffers[13]!.set(i, sample.stream);
  buffers[14]!.set(i, sample.line);
}

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
  'CREATE TABLE IF NOT EXISTS light (station_id INTEGER, at_ms BIGINT, counts VARCHAR)',
  'CREATE TABLE IF NOT EXISTS ledger (log VARCHAR, stream BIGINT, reason VARCHAR, from_line BIGINT, to_line BIGINT, count BIGINT, got VARCHAR)',
  'CREATE TABLE IF NOT EXISTS progress (log VARCHAR, seq BIGINT, state VARCHAR)',
];

/** Buffers for one chunk of samples, used again and again. */
export class SampleChunk {
  readonly #buffers = columns.map(({ kind }) => new ColumnBuffer(kind));
  readonly #types = columns.map(({ kind }) => types[kind]);

  /** Appends samples, a chunk at a time. */
  append(appender: DuckDBAppender, samples: readonly Sample[], ids: Ids): void {
    let station: string | null = null;
    let stationId = 0;
    for (let from = 0; from < samples.length; from += CHUNK_ROWS) {
      const rows = Math.min(CHUNK_ROWS, samples.length - from);
      for (let i = 0; i < rows; i++) {
        const sample = samples[from + i]!;
        if (sample.station !== station) {
          station = sample.station;
          stationId = ids.station(station);
        }
        lay(this.#buffers, i, sample, stationId, ids);
      }
      appender.appendDataChunk(chunkOf(this.#types, this.#buffers, rows));
    }
  }
}
