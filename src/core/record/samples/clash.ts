import { VanewrightError } from '../../error/index.ts';
import { shownLine, type LedgerRow } from '../ledger/ledger.ts';
import type { Sample } from './sample.ts';

/** Log under which the ledger says what was moved out of a store: it is of no raw log. */
export const MOVED_LOG = 'archive';

/** Ledger row of samples that were moved out. [-] */
export function movedRow(station: string, samples: number, where: string): LedgerRow {
  const got = shownLine(`${station}: ${where.split('/').at(-1)!}`);
  return { stream: 0, reason: 'moved-out', fromLine: 0, toLine: 0, count: samples, got };
}

/** What a store knows of a sample that it has already. */
export interface KnownSample {
  readonly headingDeg: number | null;
  readonly speedMPerS: number | null;
}

/** Samples that are new, and ledger rows for those that are not. */
export interface Sifted {
  readonly fresh: readonly Sample[];
  readonly rows: readonly LedgerRow[];
}

/** Values that a store keeps to single precision count as equal. [deg], [m/s] */
const EQUAL_WITHIN = 1e-4;

function isEqual(a: number | null, b: number | null): boolean {
  return a === b || (a !== null && b !== null && Math.abs(a - b) <= EQUAL_WITHIN);
}

/**
 * Parts new samples from those of an instant that the station has already: the first one stays.
 *
 * @param samples - In the order in which they came.
 * @param known - What the store has of that station and instant [ms UTC], or `undefined`.
 * @check src/core/record/samples/clash.test.ts
 */
export function sifted(
  samples: readonly Sample[],
  known: (station: string, atMs: number) => KnownSample | undefined,
): Sifted {
  const fresh: Sample[] = [];
  const rows: LedgerRow[] = [];
  const seen = new Map<string, Map<number, Sample>>();
  for (const sample of samples) {
    const { station, atMs, stream, line } = sample;
    const ofStation = seen.get(station) ?? new Map<number, Sample>();
    seen.set(station, ofStation);
    const before = ofStation.get(atMs) ?? known(station, atMs);
    if (before === undefined) {
      ofStation.set(atMs, sample);
      fresh.push(sample);
      continue;
    }
    const isSame =
      isEqual(before.headingDeg, sample.headingDeg) && isEqual(before.speedMPerS, sample.speedMPerS);
    const got = `${new Date(atMs).toISOString()} ${sample.headingDeg ?? '?'} deg ${sample.speedMPerS ?? '?'} m/s`;
    rows.push({
      stream,
      reason: isSame ? 'duplicate' : 'conflict',
      fromLine: line,
      toLine: line,
      count: 1,
      got,
    });
  }
  return { fresh, rows };
}

/** Whether samples follow each other and everything a store has, so that none can clash. [ms UTC] */
export function allFollow(samples: readonly Sample[], lastMs: ReadonlyMap<string, number>): boolean {
  const last = new Map(lastMs);
  let [station, before] = ['', -Infinity];
  for (const sample of samples) {
    // Samples of one station mostly come side by side.
    if (sample.station !== station) {
      last.set(station, before);
      station = sample.station;
      before = last.get(station) ?? -Infinity;
    }
    if (sample.atMs <= before) return false;
    before = sample.atMs;
  }
  return true;
}

const isNumber = (value: number | null): boolean => value === null || Number.isFinite(value);

/** Whether a store can hold a sample: numbers that are some, and no fraction of a millisecond. */
function isStorable(sample: Sample): boolean {
  return (
    Number.isSafeInteger(sample.atMs) &&
    Number.isFinite(sample.withinMs) &&
    Number.isInteger(sample.flags) &&
    isNumber(sample.headingDeg) &&
    isNumber(sample.halfWidthDeg) &&
    isNumber(sample.meanHeadingDeg) &&
    isNumber(sample.agreement) &&
    isNumber(sample.speedMPerS) &&
    isNumber(sample.gustMPerS)
  );
}

/**
 * Refuses samples that no store can hold, before anything is stored.
 *
 * @throws `store/bad-sample` at the first of them.
 */
export function requireStorable(samples: readonly Sample[]): void {
  const bad = samples.find((sample) => !isStorable(sample));
  if (!bad) return;
  throw new VanewrightError({
    code: 'store/bad-sample',
    what: 'A sample holds a number that is none; nothing of its batch was stored.',
    where: `${bad.station}, line ${bad.line}`,
    got: JSON.stringify({ atMs: bad.atMs, headingDeg: bad.headingDeg, speedMPerS: bad.speedMPerS }),
    allowed: 'an instant in whole milliseconds, and numbers or nothing',
    fix: 'Read the raw log again with this version of vanewright.',
  });
}
