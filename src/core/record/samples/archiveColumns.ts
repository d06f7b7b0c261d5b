import type { LedgerRow } from '../ledger/ledger.ts';
import type { Sample } from './sample.ts';

/** One column of the archive: what any program needs to know of it. */
export interface ArchiveColumn {
  readonly name: string;
  readonly type: 'string' | 'datetime' | 'number' | 'integer';
  /** As udunits writes it; empty for texts. */
  readonly unit: string;
  /** Standard name of the CF conventions, where there is one. */
  readonly cfName: string | null;
  readonly meaning: string;
  readonly value: (sample: Sample) => string | number | null;
}

const column = (
  [name, type, unit, cfName]: readonly [string, ArchiveColumn['type'], string, string | null],
  meaning: string,
  value: ArchiveColumn['value'],
): ArchiveColumn => ({ name, type, unit, cfName, meaning, value });

/** Columns of an archived sample, in order. */
export const archiveColumns: readonly ArchiveColumn[] = [
  column(['time', 'datetime', '', 'time'], 'Instant of the reading, UTC.', (s) =>
    new Date(s.atMs).toISOString(),
  ),
  column(
    ['time_within_s', 'number', 's', null],
    'The true instant lies within this much.',
    (s) => s.withinMs / 1000,
  ),
  column(
    ['wind_from_direction_deg', 'number', 'degree', 'wind_from_direction'],
    'Where the wind comes from, clockwise from true north, below 360; empty = not read or calm, never 0.',
    (s) => s.headingDeg,
  ),
  column(
    ['half_width_deg', 'number', 'degree', null],
    'Largest error of that direction.',
    (s) => s.halfWidthDeg,
  ),
  column(
    ['mean_from_direction_deg', 'number', 'degree', 'wind_from_direction'],
    'Unit-vector mean since the sample before, where the controller works it out.',
    (s) => s.meanHeadingDeg,
  ),
  column(['agreement', 'number', '1', null], 'Length of that mean, 1 = all alike.', (s) => s.agreement),
  column(
    ['wind_speed_m_s', 'number', 'm s-1', 'wind_speed'],
    'Mean since the sample before; empty = not read.',
    (s) => s.speedMPerS,
  ),
  column(
    ['wind_speed_of_gust_m_s', 'number', 'm s-1', 'wind_speed_of_gust'],
    'Highest 3 s mean since the sample before (cell_methods: time: maximum).',
    (s) => s.gustMPerS,
  ),
  column(['flags', 'integer', '1', null], 'Bits of the flags; docs/record.md lists them.', (s) => s.flags),
  column(['word', 'string', '', null], 'What the channels read, channel 0 first.', (s) => s.word),
  column(
    ['counts', 'string', '', null],
    'What the converter read on each channel, spaces between, once a minute.',
    (s) => s.counts?.join(' ') ?? null,
  ),
  column(['pulses', 'integer', '1', null], 'Cup contacts since the controller started.', (s) => s.pulses),
  column(
    ['edges', 'integer', '1', null],
    'Edges of the cup switch since the controller started.',
    (s) => s.edges,
  ),
  column(['source', 'integer', '1', null], 'First raw entry of the source.', (s) => s.stream),
  column(['line', 'integer', '1', null], 'Line of that source.', (s) => s.line),
];

/** A field of RFC 4180 that no spreadsheet takes for a formula; a number stays as it is. [unit of its column] */
export function csvField(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const line = (fields: readonly (string | number | null)[]): string => `${fields.map(csvField).join(',')}\r\n`;

/** First line of an archived table of samples. */
export function csvHeading(): string {
  return line(archiveColumns.map(({ name }) => name));
}

/**
 * Samples as lines of RFC 4180; units are in the descriptor beside them. [as `archiveColumns` says]
 *
 * @source RFC 4180 (2005)
 * @check src/core/record/samples/archiveColumns.test.ts
 */
export function csvText(samples: readonly Sample[]): string {
  return samples.map((sample) => line(archiveColumns.map(({ value }) => value(sample)))).join('');
}

/** Rows of the repair ledger as lines of RFC 4180, heading first where `isFirst`. */
export function ledgerCsv(rows: readonly (LedgerRow & { readonly log: string })[], isFirst: boolean): string {
  const heading = isFirst ? line(['log', 'source', 'reason', 'from_line', 'to_line', 'count', 'got']) : '';
  const text = rows.map((row) =>
    line([row.log, row.stream, row.reason, row.fromLine, row.toLine, row.count, row.got]),
  );
  return heading + text.join('');
}

/** One file of an archive. */
export interface ArchivedFile {
  readonly path: string;
  readonly station: string;
  /** `2026-05` */
  readonly month: string;
  readonly rows: number;
}

/**
 * Descriptor of an archive, in the form of a data package, so that any program finds columns and units.
 *
 * @param files - What lies beside it.
 * @param format - Of these files.
 * @source Frictionless Data, Data Package and Table Schema specifications v1 (form from memory); CF conventions for names and units.
 * @check src/core/record/samples/archiveColumns.test.ts
 */
export function archiveDescriptor(files: readonly ArchivedFile[], format: 'parquet' | 'csv'): string {
  const fields = archiveColumns.map(({ name, type, unit, cfName, meaning }) => ({
    name,
    type,
    ...(unit === '' ? {} : { unit }),
    ...(cfName === null ? {} : { standard_name: cfName }),
    description: meaning,
  }));
  const resources = files.map(({ path, station, month, rows }, i) => ({
    name: `samples-${i + 1}`,
    path,
    format,
    station,
    month,
    rows,
    schema: { fields, missingValues: [''], primaryKey: 'time' },
  }));
  const document = { profile: 'tabular-data-package', name: 'wind-record', conventions: 'CF-1.8', resources };
  return `${JSON.stringify(document, null, 2)}\n`;
}
