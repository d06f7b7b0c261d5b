import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';

const DAY_MS = 86_400_000;
/** Cups that stood this long start anew. [ms] */
const STOOD_MS = 5 * 60_000;
/** Starts that are learnt from, and the latest that are compared with them. [-]; a windy winter has few calms */
const LEARNT = 10;
const LATEST = 15;
/** The latest must come from this many days, since those of one weather are alike. [-] */
const DAYS = 2;
/** Starts that are kept to tell since when. [-] */
const KEPT = 300;
/** Rise that is worth a climb. [m/s] */
const RISE_M_PER_S = 0.3;
/** Standard errors that it must be. [-]; of two medians */
const SIGMAS = 6;
/** What those odds come to, the seasons' own change included. [-]; bench/faults.ts */
const CHANCE = 0.05;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** Standard error of a median of values that scatter like these, by their median distance from it. */
function errorOf(values: readonly number[], middle: number): number {
  const spread = 1.4826 * median(values.map((value) => Math.abs(value - middle)));
  return (1.2533 * spread) / Math.sqrt(values.length);
}

/** Cups that need more wind to start than when the record began. */
export class BearingWear implements Detector {
  readonly #episodes = new Episodes();
  readonly #first: number[] = [];
  #latest: { readonly atMs: number; readonly speed: number }[] = [];
  #stoodMs = 0;

  add({ atMs, stepMs, gapMs, speedMPerS }: Seen): void {
    if (speedMPerS === null || gapMs > 0) {
      this.#stoodMs = 0;
      return;
    }
    if (speedMPerS === 0) {
      this.#stoodMs += stepMs;
      return;
    }
    if (this.#stoodMs >= STOOD_MS) this.#started(atMs, speedMPerS);
    this.#stoodMs = 0;
  }

  #started(atMs: number, speed: number): void {
    if (this.#first.length < LEARNT) {
      this.#first.push(speed);
      return;
    }
    this.#latest.push({ atMs, speed });
    if (this.#latest.length > KEPT) this.#latest.shift();
    if (this.#latest.length >= LATEST) this.#judge(atMs);
  }

  #judge(atMs: number): void {
    const latest = this.#latest.slice(-LATEST);
    const speeds = latest.map((start) => start.speed);
    const [before, now] = [median(this.#first), median(speeds)];
    const error = Math.hypot(errorOf(this.#first, before), errorOf(speeds, now));
    const rise = now - before;
    if (this.#episodes.isOpen() && rise < RISE_M_PER_S / 2) return this.#episodes.close(atMs);
    if (rise < Math.max(RISE_M_PER_S, SIGMAS * error)) return;
    if (new Set(latest.map((start) => Math.floor(start.atMs / DAY_MS))).size < DAYS) return;
    const evidence =
      `The wind shown when they start again after five minutes is ${now.toFixed(2)} m/s (median of ${LATEST} starts), ` +
      `and was ${before.toFixed(2)} m/s at first (${LEARNT} starts): ${rise.toFixed(2)} ± ${error.toFixed(2)} m/s more.`;
    if (this.#episodes.isOpen()) return this.#episodes.update({ evidence });
    this.#episodes.open({
      kind: 'bearing-wear',
      sinceMs: this.#firstSlow(before + RISE_M_PER_S / 2),
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'The cups need more wind to start than they did',
      evidence,
      falseAlarmChance: CHANCE,
      todo: 'Let the cups spin down by hand and compare (vanewright fit tells the spin-down time); clean or replace the bearing.',
      spoils: 'speed',
      daysLeft: null,
    });
  }

  /** First of the kept starts from which on nearly all need more than that speed. [m/s], [ms UTC] */
  #firstSlow(limit: number): number {
    let [slow, all, since] = [0, 0, this.#latest.at(-1)!.atMs];
    for (const start of [...this.#latest].reverse()) {
      all++;
      if (start.speed > limit) slow++;
      if (slow >= 0.8 * all && start.speed > limit) since = start.atMs;
    }
    return since;
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
