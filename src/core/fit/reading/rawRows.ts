import type { Recording, Repair } from './recording.ts';

/** A row before it has its place in time. */
export interface RawRow {
  readonly line: number;
  /** Clock of the row in its own unit, or `null` where the file has none. */
  readonly clock: number | null;
  readonly values: readonly number[];
  readonly markDeg: number | null;
  /** Something between this row and the one before says that the controller started again. */
  readonly startsAnew: boolean;
}

/** Rows of one file, all of one layout. */
export interface RawFile {
  readonly file: string;
  readonly content: Recording['content'];
  readonly columns: readonly string[];
  /** Length of one unit of the clock, and where it starts again at 0. [ms], [unit] */
  readonly clockMs: number;
  readonly wrapsAt: number;
  readonly rows: readonly RawRow[];
  readonly repairs: readonly Repair[];
  /** Lines that held something. [-] */
  readonly lines: number;
}

/** Milliseconds and microseconds of a controller start again after 2^32. */
export const WRAP = 4_294_967_296;

/** A writer of repairs for one file. */
export type Note = (line: number, kind: Repair['kind'], what: string) => void;

/** At most this much of a line is shown back. [characters] */
const SHOWN_MOST = 40;

/** What a line said, printable and not too long. */
export function shown(text: string): string {
  const short = text.length > SHOWN_MOST ? `${text.slice(0, SHOWN_MOST)}…` : text;
  return short.replace(/[^\x20-\x7e…]/g, '\ufffd');
}
