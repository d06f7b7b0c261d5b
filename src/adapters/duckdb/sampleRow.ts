import type { DuckDBConnection, DuckDBMaterializedResult, DuckDBValue } from '@duckdb/node-api';
import type { FaultColumns } from '../../core/faults/index.ts';
import { READ_HEADING, READ_SPEED, type SampleColumns } from '../../core/wind/index.ts';
import type { Sample } from '../../core/record/index.ts';
import { doublesOf } from './columnBuffer.ts';

const FIELDS = [
  ...['at_ms', 'within_ms', 'heading_deg', 'half_width_deg', 'mean_heading_deg', 'agreement'],
  ...['speed_m_per_s', 'gust_m_per_s', 'flags', 'word_id', 'pulses', 'edges', 'stream', 'line'],
];

const asDoubles = (names: readonly string[]): string =>
  names.map((name) => `coalesce(${name}::DOUBLE, 'NaN'::DOUBLE)`).join(', ');

/** Numbers of a whole sample, in the order that `samplesOf` takes them; what is not there is NaN. */
export const SAMPLE_FIELDS = asDoubles(FIELDS);

const FAULT_NAMES = [
  'at_ms',
  'heading_deg',
  'speed_m_per_s',
  'flags',
  'word_id',
  'pulses',
  'edges',
  'stream',
  'line',
];

/** Numbers that the fault detectors take, in the order of `faultColumnsFrom`. */
export const FAULT_FIELDS = asDoubles(FAULT_NAMES);

/** Columns of a result of doubles: many times faster than row by row. */
function doubleColumns(result: DuckDBMaterializedResult): Float64Array[] {
  const all = Array.from({ length: result.columnCount }, () => new Float64Array(result.rowCount));
  for (let i = 0, at = 0; i < result.chunkCount; i++) {
    const chunk = result.getChunk(i);
    for (const [column, joined] of all.entries()) joined.set(doublesOf(chunk, column), at);
    at += chunk.rowCount;
  }
  return all;
}

/**
 * Columns of a part of the samples in order of time, which is the first field: rows come as they were put in, nearly
 * always in order, and to have the engine sort them takes longer than all else.
 *
 * @param part - Number of the station, and instants. [ms UTC]
 */
export async function columnsInOrder(
  connection: DuckDBConnection,
  fields: string,
  part: DuckDBValue[],
): Promise<Float64Array[]> {
  const sql = `SELECT ${fields} FROM sample WHERE station_id = $1 AND at_ms >= $2 AND at_ms < $3`;
  const columns = doubleColumns(await connection.run(sql, part));
  const [atMs] = columns;
  const isRising = atMs!.every((at, i) => i === 0 || at > atMs![i - 1]!);
  return isRising ? columns : doubleColumns(await connection.run(`${sql} ORDER BY at_ms`, part));
}

/** Numbers that the wind arithmetic takes, in the order of `windColumnsFrom`. */
export const WIND_FIELDS = `at_ms::DOUBLE, coalesce(heading_deg, 0), coalesce(speed_m_per_s, 0),
  (CASE WHEN heading_deg IS NULL THEN 0 ELSE ${READ_HEADING} END
  + CASE WHEN speed_m_per_s IS NULL THEN 0 ELSE ${READ_SPEED} END)::DOUBLE`;

/** Columns for the wind arithmetic. */
export function windColumnsFrom(columns: readonly Float64Array[]): SampleColumns {
  const [atMs, headingDeg, speedMPerS, read] = columns;
  return {
    atMs: atMs!,
    headingDeg: headingDeg!,
    speedMPerS: speedMPerS!,
    read: Uint8Array.from(read!),
  };
}

const countsOf = (text: string): number[] => text.split(' ').map(Number);

/**
 * Columns for the fault detectors.
 *
 * @param countsAt - As for `samplesOf`.
 * @param words - Every word, at the place that its number tells.
 */
export function faultColumnsFrom(
  columns: readonly Float64Array[],
  countsAt: ReadonlyMap<number, string>,
  words: readonly string[],
): FaultColumns {
  const [atMs, headingDeg, speedMPerS, flags, word, ...totals] = columns;
  const [pulses, edges, stream, line] = totals;
  const counts = new Map(Array.from(countsAt, ([at, text]) => [at, countsOf(text)] as const));
  return {
    atMs: atMs!,
    headingDeg: headingDeg!,
    speedMPerS: speedMPerS!,
    flags: flags!,
    word: word!,
    words,
    pulses: pulses!,
    edges: edges!,
    stream: stream!,
    line: line!,
    countsAt: counts,
  };
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

/**
 * Samples of columns that were read.
 *
 * @param countsAt - Counts of the samples that have them, as they are stored, by their instant.
 */
export function samplesOf(
  station: string,
  columns: readonly Float64Array[],
  countsAt: ReadonlyMap<number, string>,
  wordOf: (id: number) => string,
): Sample[] {
  const [atMs, withinMs, heading, halfWidth, meanHeading, agreement, speed, gust] = columns;
  const [flags, wordId, pulses, edges, stream, line] = columns.slice(8);
  return Array.from(atMs!, (at, i) => {
    const counts = countsAt.get(at);
    return {
      station,
      atMs: at,
      withinMs: withinMs![i]!,
      headingDeg: orNull(heading![i]!),
      halfWidthDeg: orNull(halfWidth![i]!),
      meanHeadingDeg: orNull(meanHeading![i]!),
      agreement: orNull(agreement![i]!),
      speedMPerS: orNull(speed![i]!),
      gustMPerS: orNull(gust![i]!),
      flags: flags![i]!,
      word: Number.isNaN(wordId![i]!) ? null : wordOf(wordId![i]!),
      counts: counts === undefined ? null : countsOf(counts),
      pulses: orNull(pulses![i]!),
      edges: orNull(edges![i]!),
      stream: stream![i]!,
      line: line![i]!,
    };
  });
}
