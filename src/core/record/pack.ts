import type { Problem } from '../error/index.ts';
import { shownText } from './parseLine.ts';

/** One value of a SenML pack, names and times made whole. */
export interface PackRecord {
  /** Base name and name together. */
  readonly name: string;
  readonly unit: string | null;
  /** Number, text or truth as it was sent. */
  readonly value: number | string | boolean;
  /** Instant, or seconds before now when below 2^28; `null` when nothing is said. [s since 1970-01-01 UTC] */
  readonly timeS: number | null;
}

/** A pack that was read, or the one reason why it was not. */
export type ParsedPack =
  | { readonly ok: true; readonly records: readonly PackRecord[] }
  | { readonly ok: false; readonly refusal: Problem };

/** Longest pack that is looked at. [characters] */
const PACK_MOST = 65_536;
/** Version of the format that RFC 8428 describes. */
const VERSION_MOST = 10;

const reasons = {
  'record/pack-foreign': {
    what: 'The text is not a SenML pack.',
    allowed: 'a JSON list of at least one object, at most 64 KiB',
    fix: 'Leave it out, and check that the sender is one of ours or follows RFC 8428.',
  },
  'record/pack-value': {
    what: 'A record of the pack holds what RFC 8428 does not allow.',
    allowed:
      'a name of letters, digits and -:./_ that begins with one of the first two, one value, numbers finite',
    fix: 'If every pack looks like this, check the sender.',
  },
} as const;

function refusal(code: keyof typeof reasons, where: string, got: string): ParsedPack {
  return { ok: false, refusal: { code, where, got: shownText(got), ...reasons[code] } };
}

/** Time and order of what goes into a pack. */
export interface PackHead {
  /** Prefix of every name: letters, digits and `-:./_`. */
  readonly baseName: string;
  /** `null` for "now". [s since 1970-01-01 UTC] */
  readonly timeS: number | null;
}

/**
 * A SenML pack of one direction, one speed and the counters, whatever of them is known.
 *
 * @param head - Base name and instant. [s]
 * @param records - Name, unit of the RFC's table and value, in order. n ≥ 1
 * @source RFC 8428 (2018), tables 1 and 2; `deg` from the RFC 8798 text, read in draft form.
 * @check src/core/record/pack.test.ts
 */
export function formatPack(
  head: PackHead,
  records: readonly (Omit<PackRecord, 'timeS'> & { readonly name: string })[],
): string {
  const base = { bn: head.baseName, ...(head.timeS === null ? {} : { bt: head.timeS }) };
  const rows = records.map(({ name, unit, value }, i) => ({
    ...(i === 0 ? base : {}),
    n: name,
    ...(unit === null ? {} : { u: unit }),
    ...(typeof value === 'number' ? { v: value } : typeof value === 'string' ? { vs: value } : { vb: value }),
  }));
  return JSON.stringify(rows);
}

type Fields = Readonly<Record<string, unknown>>;

/** Types of the labels of RFC 8428; any other label is ignored, unless its name ends in `_`, which must be known. */
const labels: Readonly<Record<string, 'number' | 'string' | 'boolean'>> = {
  bn: 'string',
  bt: 'number',
  bu: 'string',
  bv: 'number',
  bs: 'number',
  bver: 'number',
  n: 'string',
  u: 'string',
  v: 'number',
  vs: 'string',
  vb: 'boolean',
  vd: 'string',
  s: 'number',
  t: 'number',
  ut: 'number',
};

/** The label of a record that is not of its type, or that must be understood and is not. */
function oddLabel(fields: Fields): string | undefined {
  return Object.keys(fields).find((label) => {
    const type = Object.hasOwn(labels, label) ? labels[label] : undefined;
    if (type === undefined) return label.endsWith('_');
    return typeof fields[label] !== type;
  });
}

/** Base fields that hold until the next ones, with their start values. */
interface Base {
  bn: string;
  bt: number | null;
  bu: string | null;
  bv: number;
}

/** The record of one object, `null` for one that only carries base fields, or what is wrong. */
function recordOf(fields: Fields, base: Base): PackRecord | null | string {
  const name = `${base.bn}${(fields.n as string | undefined) ?? ''}`;
  const values = ['v', 'vs', 'vb', 'vd'].filter((label) => label in fields);
  if (values.length > 1) return values.join(' and ');
  if (values.length === 0) return 's' in fields ? 'a sum without a value' : null;
  if (!/^[A-Za-z0-9][-A-Za-z0-9:./_]*$/.test(name)) return name;
  const [label] = values;
  const raw = fields[label!] as number | string | boolean;
  const value = label === 'v' ? base.bv + (raw as number) : raw;
  const hasTime = base.bt !== null || 't' in fields;
  return {
    name,
    unit: (fields.u as string | undefined) ?? base.bu,
    value,
    timeS: hasTime ? (base.bt ?? 0) + ((fields.t as number | undefined) ?? 0) : null,
  };
}

function listOf(text: string): readonly unknown[] | null {
  if (text.length > PACK_MOST) return null;
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) && value.length > 0 ? value : null;
  } catch {
    return null;
  }
}

/**
 * The values of a SenML pack in JSON, base fields worked in; it never throws and never repairs.
 *
 * @param text - The whole pack.
 * @returns Records in the order of the pack; instants in seconds. [s]
 * @source RFC 8428 (2018), sections 4.1 to 4.6.
 * @check src/core/record/pack.test.ts
 */
export function parsePack(text: string): ParsedPack {
  const list = listOf(text);
  if (!list) return refusal('record/pack-foreign', 'pack', text);
  const base: Base = { bn: '', bt: null, bu: null, bv: 0 };
  const records: PackRecord[] = [];
  for (const [i, entry] of list.entries()) {
    const where = `record ${i}`;
    if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) {
      return refusal('record/pack-value', where, JSON.stringify(entry));
    }
    const fields = entry as Fields;
    const odd = oddLabel(fields);
    if (odd !== undefined)
      return refusal('record/pack-value', where, `${odd}: ${JSON.stringify(fields[odd])}`);
    if (((fields.bver as number | undefined) ?? VERSION_MOST) > VERSION_MOST) {
      return refusal('record/pack-value', where, `version ${String(fields.bver)}`);
    }
    for (const label of ['bn', 'bt', 'bu', 'bv'] as const) {
      if (label in fields) Object.assign(base, { [label]: fields[label] });
    }
    const record = recordOf(fields, base);
    if (typeof record === 'string') return refusal('record/pack-value', where, record);
    if (record) records.push(record);
  }
  if (records.length === 0) return refusal('record/pack-foreign', 'pack', text);
  return { ok: true, records };
}
