import type { PackRecord } from '../pack.ts';
import { radToDeg, wrapDegrees } from '../../units/index.ts';
import type { ReadContext, TextLine } from './readContext.ts';
import { sampleWith, type Sample } from './sample.ts';

/** Times below this are relative to now (RFC 8428, section 4.5.3). [s] */
const ABSOLUTE_FROM_S = 2 ** 28;
/** How surely a pack's own time is known: half of the millisecond or second it is written to. [ms] */
const OWN_TIME_WITHIN_MS = 500;
const ARRIVAL_WITHIN_MS = 1000;

type Field = 'headingDeg' | 'halfWidthDeg' | 'speedMPerS' | 'gustMPerS' | 'pulses' | 'edges';

/** Last part of a record's name, and the field it fills. */
const FIELDS: Readonly<Record<string, Field>> = {
  dir: 'headingDeg',
  direction: 'headingDeg',
  halfwidth: 'halfWidthDeg',
  speed: 'speedMPerS',
  gust: 'gustMPerS',
  pulses: 'pulses',
  edges: 'edges',
};

/** The value in house units, or `null` for a unit that does not fit the field. */
function inHouseUnit(field: Field, { unit, value }: PackRecord): number | null {
  if (typeof value !== 'number' || !Number.isFinite(value)) return null;
  if (field === 'headingDeg' || field === 'halfWidthDeg') {
    const degrees = unit === 'deg' ? value : unit === 'rad' ? radToDeg(value) : null;
    return degrees === null || field === 'halfWidthDeg' ? degrees : wrapDegrees(degrees);
  }
  if (field === 'pulses' || field === 'edges') return Number.isInteger(value) && value >= 0 ? value : null;
  const speed = unit === 'm/s' ? value : unit === 'km/h' ? value / 3.6 : null;
  return speed !== null && speed >= 0 ? speed : null;
}

function instantOf(timeS: number | null, { arrivedMs }: TextLine): { atMs: number; withinMs: number } | null {
  if (timeS !== null && timeS >= ABSOLUTE_FROM_S) return { atMs: timeS * 1000, withinMs: OWN_TIME_WITHIN_MS };
  if (arrivedMs === null) return null;
  return { atMs: arrivedMs + 1000 * (timeS ?? 0), withinMs: ARRIVAL_WITHIN_MS };
}

/**
 * Samples of a pack: one for each instant in it, other values left out and listed.
 *
 * @param records - As `parsePack` gives them.
 * @source RFC 8428 (2018), section 4.5.3 (absolute and relative times).
 * @check src/core/record/samples/streamReader.test.ts
 */
export function packSamples(
  records: readonly PackRecord[],
  line: TextLine,
  { head, ledger }: ReadContext,
): Sample[] {
  const samples = new Map<number, Partial<Record<Field, number>> & { atMs: number; withinMs: number }>();
  for (const record of records) {
    const name = record.name.split(/[:./]/).at(-1)!.toLowerCase();
    const field = Object.hasOwn(FIELDS, name) ? FIELDS[name]! : null;
    if (field === null) continue;
    const placed = instantOf(record.timeS, line);
    if (!placed) {
      ledger.note('time-unknown', line.number, line.text);
      continue;
    }
    const value = inHouseUnit(field, record);
    if (value === null) {
      ledger.note('bad-value', line.number, `${record.name}: ${String(record.value)} ${record.unit ?? ''}`);
      continue;
    }
    const sample = samples.get(placed.atMs) ?? placed;
    samples.set(placed.atMs, { ...sample, [field]: value });
  }
  return [...samples.values()].map((fields) =>
    sampleWith({ station: head.station, ...fields, stream: head.stream, line: line.number }),
  );
}
