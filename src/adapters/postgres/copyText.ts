import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { PoolClient } from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import type { Sample } from '../../core/record/index.ts';
import type { StoredLedgerRow } from '../../ports/index.ts';

type Field = string | number | null;

/** One field of the text format of COPY. */
function fieldText(field: Field): string {
  if (field === null) return '\\N';
  if (typeof field === 'number') return String(field);
  // The server keeps no zero byte in a text.
  return field.replace(/[\\\b\f\n\r\t\v]/g, (char) => `\\${ESCAPES[char]!}`).replaceAll('\0', '\ufffd');
}
const ESCAPES: Readonly<Record<string, string>> = {
  '\\': '\\',
  '\b': 'b',
  '\f': 'f',
  '\n': 'n',
  '\r': 'r',
  '\t': 't',
  '\v': 'v',
};

function* linesOf<T>(rows: readonly T[], fields: (row: T) => readonly Field[]): Generator<string> {
  const step = 1000;
  for (let from = 0; from < rows.length; from += step) {
    yield rows
      .slice(from, from + step)
      .map((row) => `${fields(row).map(fieldText).join('\t')}\n`)
      .join('');
  }
}

/** Samples into their table, the fast way. */
export async function copySamples(
  client: PoolClient,
  samples: readonly Sample[],
  stationId: (name: string) => number,
): Promise<void> {
  const into = client.query(
    copyFrom(
      `COPY sample (station_id, at_ms, within_ms, heading_deg, half_width_deg, mean_heading_deg, agreement,
        speed_m_per_s, gust_m_per_s, flags, word, counts, pulses, edges, stream, line) FROM STDIN`,
    ),
  );
  const lines = linesOf(samples, (s) => [
    stationId(s.station),
    s.atMs,
    s.withinMs,
    s.headingDeg,
    s.halfWidthDeg,
    s.meanHeadingDeg,
    s.agreement,
    s.speedMPerS,
    s.gustMPerS,
    s.flags,
    s.word,
    s.counts?.join(' ') ?? null,
    s.pulses,
    s.edges,
    s.stream,
    s.line,
  ]);
  await pipeline(Readable.from(lines), into);
}

/** Ledger rows into their table. */
export async function copyLedger(client: PoolClient, rows: readonly StoredLedgerRow[]): Promise<void> {
  const into = client.query(
    copyFrom('COPY ledger (log, stream, reason, from_line, to_line, count, got) FROM STDIN'),
  );
  const lines = linesOf(rows, (r) => [r.log, r.stream, r.reason, r.fromLine, r.toLine, r.count, r.got]);
  await pipeline(Readable.from(lines), into);
}
