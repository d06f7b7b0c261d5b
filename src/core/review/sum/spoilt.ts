import type { Finding } from '../../faults/index.ts';
import { READ_HEADING, READ_SPEED, type SampleColumns } from '../../wind/index.ts';

/** Time in which a fault makes readings untrue. */
export interface Spoilt {
  /** Included. [ms UTC] */
  readonly fromMs: number;
  /** Included. [ms UTC] */
  readonly toMs: number;
  /** Bits of what is untrue: READ_HEADING, READ_SPEED. [-] */
  readonly bits: number;
}

const BITS: Record<Finding['spoils'], number> = {
  nothing: 0,
  heading: READ_HEADING,
  speed: READ_SPEED,
  both: READ_HEADING | READ_SPEED,
};

/** Time that findings spoil; one that still lasts spoils everything after its beginning. [ms UTC] */
export function spoiltBy(findings: readonly Finding[]): Spoilt[] {
  return findings.flatMap(({ sinceMs, untilMs, spoils }) =>
    spoils === 'nothing' ? [] : [{ fromMs: sinceMs, toMs: untilMs ?? Infinity, bits: BITS[spoils] }],
  );
}

/**
 * The same samples with what is spoilt marked as not read; the columns that were given stay as they are.
 *
 * @param columns - In order of time. [ms UTC], [deg], [m/s]
 * @param spoilt - As `spoiltBy` gives it. [ms UTC]
 * @check src/core/review/sum/spoilt.test.ts
 */
export function withoutSpoilt(columns: SampleColumns, spoilt: readonly Spoilt[]): SampleColumns {
  const { atMs } = columns;
  const count = atMs.length;
  const within = spoilt.filter(
    ({ fromMs, toMs }) => count > 0 && fromMs <= atMs[count - 1]! && toMs >= atMs[0]!,
  );
  if (within.length === 0) return columns;
  const read = columns.read.slice();
  for (const { fromMs, toMs, bits } of within) {
    for (let i = 0; i < count && atMs[i]! <= toMs; i++) if (atMs[i]! >= fromMs) read[i]! &= ~bits;
  }
  return { ...columns, read };
}
