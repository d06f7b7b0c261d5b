import type { Note, RawFile, RawRow } from './rawRows.ts';
import type { Repair, Stretch, Turned } from './recording.ts';

/** A pause in the rows longer than this many usual steps, and this long, ends a stretch. [-], [ms] */
const GAP_STEPS = 10;
const GAP_MS = 150;
/** A clock that falls from this near its end to this near its start has wrapped. [share of its range] */
const WRAP_SHARE = 0.02;
/** Usual step where no clock tells it. [ms] */
const ASSUMED_STEP_MS = 20;

interface TimedRow extends RawRow {
  readonly ms: number;
}

function usualStepMs(times: readonly number[]): number {
  const steps = times
    .slice(1)
    .map((time, i) => time - times[i]!)
    .filter((step) => step > 0);
  return steps.sort((a, b) => a - b)[steps.length >> 1] ?? ASSUMED_STEP_MS;
}

const isSame = (a: readonly number[], b: readonly number[]): boolean => a.every((value, i) => value === b[i]);

/** Puts the rows of a file in time: clocks unwrapped, restarts and long gaps made into ends of stretches. */
class Timing {
  readonly pieces: TimedRow[][] = [];
  readonly #raw: RawFile;
  readonly #note: Note;
  #wrapped = 0;
  readonly #gapMs: number;

  constructor(raw: RawFile, note: Note) {
    this.#raw = raw;
    this.#note = note;
    const clocks = raw.rows.flatMap((row) => (row.clock === null ? [] : [row.clock * raw.clockMs]));
    this.#gapMs = Math.max(GAP_MS, GAP_STEPS * usualStepMs(clocks));
  }

  take(row: RawRow): void {
    const piece = this.pieces.at(-1);
    const last = piece?.at(-1);
    const clock = row.clock!;
    if (!piece || !last) return this.#begin(row, clock);
    const lastClock = last.clock!;
    const { wrapsAt, clockMs } = this.#raw;
    if (
      clock < lastClock &&
      !row.startsAnew &&
      lastClock > (1 - WRAP_SHARE) * wrapsAt &&
      clock < WRAP_SHARE * wrapsAt
    ) {
      this.#wrapped += wrapsAt;
      this.#note(
        row.line,
        'clock-wrapped',
        'The clock ran to its end and started again at 0; the time goes on.',
      );
    } else if (row.startsAnew || clock < lastClock) {
      const what = row.startsAnew ? 'The controller started again' : 'The clock went back';
      this.#note(row.line, row.startsAnew ? 'restart' : 'time-went-back', `${what}: a new stretch begins.`);
      return this.#begin(row, clock);
    }
    const ms = (clock + this.#wrapped) * clockMs;
    if (ms === last.ms) return this.#tied(row, last, piece);
    if (ms - last.ms > this.#gapMs) {
      this.#note(row.line, 'gap', `No rows for ${Math.round(ms - last.ms)} ms: a new stretch begins.`);
      return this.#begin(row, clock);
    }
    piece.push({ ...row, ms });
  }

  #begin(row: RawRow, clock: number): void {
    this.pieces.push([{ ...row, ms: (clock + this.#wrapped) * this.#raw.clockMs }]);
  }

  #tied(row: RawRow, last: TimedRow, piece: TimedRow[]): void {
    if (isSame(row.values, last.values)) {
      this.#note(row.line, 'duplicate', 'Left out a row that repeats the one before.');
      return;
    }
    // Two samples in one tick of the clock: spread out afterwards.
    piece.push({ ...row, ms: last.ms });
  }
}

/** Rows that share one tick of the clock spread evenly over it. */
function spread(piece: readonly TimedRow[], note: Note): number[] {
  const times = piece.map(({ ms }) => ms);
  let shared = 0;
  for (let i = 0; i < times.length;) {
    let end = i + 1;
    while (end < times.length && times[end] === times[i]) end++;
    const next = times[end] ?? times[i]! + usualStepMs(times);
    for (let k = i + 1; k < end; k++) {
      times[k] = times[i]! + ((next - times[i]!) * (k - i)) / (end - i);
      shared += 1;
    }
    i = end;
  }
  if (shared > 0)
    note(piece[0]!.line, 'same-time', `Spread ${shared} rows evenly that shared a time with the row before.`);
  return times;
}

const COUNTER = /(^|[^a-z])(ccw|anti-?_?clockwise|counter-?_?clockwise|widdershins)([^a-z]|$)/i;
const CLOCKWISE = /(^|[^a-z])(cw|clockwise)([^a-z]|$)/i;

/** Which way a file was turned, by what the maker says or by the file's name. */
function turnedOf(
  file: string,
  turned: Readonly<Record<string, Turned>> | undefined,
  note: Note,
): Turned | null {
  const base = file.replace(/^.*[\\/]/, '');
  const told = turned?.[file] ?? turned?.[base] ?? turned?.['*'];
  if (told) return told;
  const named = COUNTER.test(base) ? 'counter-clockwise' : CLOCKWISE.test(base) ? 'clockwise' : null;
  if (named)
    note(0, 'turned-by-name', `Taken as turned ${named}, seen from above, since the file's name says so.`);
  return named;
}

/** Stretches of a file, with what was done to make them. */
export function stretchesOf(
  raw: RawFile,
  turned: Readonly<Record<string, Turned>> | undefined,
): { stretches: Stretch[]; repairs: Repair[]; hasTimes: boolean } {
  const repairs: Repair[] = [];
  const note: Note = (line, kind, what) => void repairs.push({ file: raw.file, line, kind, what });
  const hasTimes = raw.rows.length > 0 && raw.rows.every((row) => row.clock !== null);
  const timing = new Timing(raw, note);
  if (!hasTimes && raw.rows.length > 0) {
    note(0, 'no-times', 'No column tells the time: rows are taken to be evenly spaced.');
  }
  let evenly = 0;
  for (const row of raw.rows) {
    if (hasTimes) timing.take(row);
    else {
      evenly = row.startsAnew ? 0 : evenly + ASSUMED_STEP_MS / raw.clockMs;
      timing.take({ ...row, clock: evenly });
    }
  }
  const way = turnedOf(raw.file, turned, note);
  const stretches = timing.pieces.map((piece) => ({
    file: raw.file,
    fromLine: piece[0]!.line,
    timesMs: spread(piece, note),
    rows: piece.map(({ values }) => values),
    marksDeg: piece.map(({ markDeg }) => markDeg),
    turned: way,
  }));
  return { stretches, repairs, hasTimes };
}
