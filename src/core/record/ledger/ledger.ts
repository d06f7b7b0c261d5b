import { ledgerReasons, type LedgerReason } from './ledgerReasons.ts';

/** One row of the repair ledger: one line, or a run of lines side by side with the same reason. */
export interface LedgerRow {
  /** Which source: the sequence number of its first raw entry. [-] */
  readonly stream: number;
  readonly reason: LedgerReason;
  /** First and last line of the source, counted from 1; 0 for the source as a whole. [-] */
  readonly fromLine: number;
  readonly toLine: number;
  /** Lines, samples, or bytes for `empty-bytes` and `raw-damaged`. [-] */
  readonly count: number;
  /** What the first of them looked like, in print and not all of a long text. */
  readonly got: string;
}

/** At most this much of a line is shown back. [characters] */
const SHOWN_MOST = 60;

/** A piece of what came in, without control characters, and not all of a long text. */
export function shownLine(text: string): string {
  const cut = text.length > SHOWN_MOST ? `${text.slice(0, SHOWN_MOST)}…` : text;

  return cut.replace(/[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]/g, '\ufffd');
}

/** Collects the repairs of one source; lines side by side with one reason make one row. */
export class Ledger {
  readonly #stream: number;
  #rows: LedgerRow[] = [];
  /** Rows up to here may not grow any more. [-] */
  #closed = 0;

  /** @param stream - Sequence number of the first raw entry of the source. [-] */
  constructor(stream: number) {
    this.#stream = stream;
  }

  /**
   * @param reason - Why.
   * @param line - Line of the source, from 1; 0 for the source as a whole. [-]
   * @param got - What it looked like.
   * @param count - Lines, samples or bytes. [-]
   */
  note(reason: LedgerReason, line: number, got: string, count = 1): void {
    const last = this.#rows.length > this.#closed ? this.#rows.at(-1) : undefined;
    if (last && last.reason === reason && (last.toLine === line || last.toLine + 1 === line)) {
      this.#rows[this.#rows.length - 1] = { ...last, toLine: line, count: last.count + count };
      return;
    }
    this.#rows.push({
      stream: this.#stream,
      reason,
      fromLine: line,
      toLine: line,
      count,
      got: shownLine(got),
    });
  }

  /** Ends every run of lines, so that rows do not depend on how many entries are read at a time. */
  endEntry(): void {
    this.#closed = this.#rows.length;
  }

  /** The rows since the last drain, which are then forgotten. */
  drain(): LedgerRow[] {
    const rows = this.#rows;
    this.#rows = [];
    this.#closed = 0;
    return rows;
  }
}

/** How often each reason stands in a ledger, most frequent first. [-] */
export function ledgerCounts(
  rows: Iterable<LedgerRow>,
): { readonly reason: LedgerReason; readonly count: number }[] {
  const counts = new Map<LedgerReason, number>();
  for (const { reason, count } of rows) counts.set(reason, (counts.get(reason) ?? 0) + count);
  const known = Object.keys(ledgerReasons) as LedgerReason[];
  return known
    .flatMap((reason) => (counts.has(reason) ? [{ reason, count: counts.get(reason)! }] : []))
    .sort((a, b) => b.count - a.count);
}
