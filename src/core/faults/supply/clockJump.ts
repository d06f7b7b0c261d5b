import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { lasting, minute } from '../saying.ts';

const HOUR_MS = 3_600_000;
/** Lines out of order from which a clock has run back. [-] */
const BACKWARDS = 5;
/** A leap over this much is no silence but a clock that was set. [ms] */
const LEAP_MS = 180 * 24 * HOUR_MS;
/** Chance in a year of a sound clock: silences of exactly an hour, by the minute, one in 60 of a few. [-] */
const CHANCE = 0.05;
/** Findings of one jump are told once in this time. [ms] */
const ONCE_MS = 24 * HOUR_MS;

/** A clock that was set while the record went on: an hour for summer time, a wrong year after a flat battery. */
export class ClockJump implements Detector {
  readonly #episodes = new Episodes();
  #backwards = 0;
  #firstMs = 0;
  #lastMs = -Infinity;

  add({ atMs, gapMs, usualMs, lineStep }: Seen): void {
    const isNext = lineStep === 1;
    if (gapMs > LEAP_MS && isNext) this.#tell(atMs - gapMs, atMs, `leaps ahead by ${lasting(gapMs)}`, gapMs);
    // Lines side by side an hour apart to within one line: nobody switches off for so exact a time.
    const overMs = gapMs - usualMs;
    const isHour =
      isNext && gapMs > 0 && usualMs < HOUR_MS / 30 && Math.abs(overMs - HOUR_MS) <= Math.min(usualMs, 2000);
    if (isHour) this.#tell(atMs - gapMs, atMs, 'leaps ahead by an hour, as for summer time', overMs);
    if (lineStep >= 0) return;
    if (this.#backwards++ === 0) this.#firstMs = atMs;
    if (this.#backwards < BACKWARDS) return;
    this.#tell(this.#firstMs, atMs, 'has run through the same time twice', 0);
    this.#backwards = 0;
  }

  #tell(sinceMs: number, atMs: number, how: string, byMs: number): void {
    if (sinceMs - this.#lastMs < ONCE_MS) return;
    this.#lastMs = atMs;
    this.#episodes.open({
      kind: 'clock-jump',
      sinceMs,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: `The clock ${how}`,
      evidence:
        byMs > 0
          ? `Two lines that follow each other in the log are ${lasting(byMs)} apart at ${minute(sinceMs)}.`
          : `From ${minute(sinceMs)} on lines with later numbers have earlier times; the first reading of an instant was kept.`,
      falseAlarmChance: CHANCE,
      todo: 'Log in UTC with a clock that nobody sets; read the old log again with --zone, or tell its time with --moment.',
      spoils: 'nothing',
      daysLeft: null,
    });
    this.#episodes.close(atMs);
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
