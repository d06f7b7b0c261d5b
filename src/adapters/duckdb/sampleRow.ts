import type { DuckDBValue } from '@duckdb/node-api';
import type { Sample } from '../../core/record/index.ts';

/** Fields of a whole sample, in the order that `sampleOf` takes them. */
export const SAMPLE_FIELDS =
  'at_ms, within_ms, heading_deg, half_width_deg, mean_heading_deg, agreement, speed_m_per_s, gust_m_per_s, flags, word_id, pulses, edges, stream, line, counts';

/** A sample of a row that was read. */
export function sampleOf(
  station: string,
  row: readonly DuckDBValue[],
  wordOf: (id: number) => string,
): Sample {
  const number = (i: number): number | null => (row[i] === null ? null : Number(row[i]));
  const wordId = number(9);
  return {
    station,
    atMs: number(0)!,
    withinMs: number(1)!,
    headingDeg: number(2),
    halfWidthDeg: number(3),
    meanHeadingDeg: number(4),
    agreement: number(5),
    speedMPerS: number(6),
    gustMPerS: number(7),
    flags: number(8)!,
    word: wordId === null ? null : wordOf(wordId),
    counts: row[14] === null ? null : (row[14] as string).split(' ').map(Number),
    pulses: number(10),
    edges: number(11),
    stream: number(12)!,
    line: number(13)!,
  };
}
