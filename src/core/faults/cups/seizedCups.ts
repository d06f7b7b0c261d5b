import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { lasting } from '../saying.ts';

const HOUR_MS = 3_600_000;
/** Wind in which it is learnt how often the vane moves. [m/s] */
const WINDY_M_PER_S = 2;
/** Windy time from which that is known. [ms] */
const LEARNT_MS = 24 * HOUR_MS;
/** Standing cups are looked at over this many hours. [-] */
const HOURS = 6;
/** Share of the usual movement that means wind. [-]; measured in bench/faults.ts */
const SHARE = 0.5;
/** Chance of such a stretch in a year of sound cups. [-]; bench/faults.ts counts them */
const CHANCE = 0.05;

/** Cups that stand while the vane moves as it does in wind. */
export class SeizedCups implements Detector {
  readonly #episodes = new Episodes();
  #windyMs = 0;
  #windyMoves = 0;
  #stillSinceMs: number | null = null;
  /** Moves and time of the last hours of standing cups. */
  #hours: { moves: number; ms: number }[] = [];

  add({ atMs, stepMs, position, before, speedMPerS, pulses }: Seen): void {
    if (speedMPerS === null && pulses === null) return;
    const turns = (speedMPerS ?? 0) > 0 || (pulses ?? 0) > 0;
    const moved = before !== null && position !== null && position !== before ? 1 : 0;
    if (turns) {
      this.#episodes.close(atMs);
      this.#stillSinceMs = null;
      this.#hours = [];
      if (speedMPerS !== null && speedMPerS >= WINDY_M_PER_S) {
        this.#windyMs += stepMs;
        this.#windyMoves += moved;
      }
      return;
    }
    this.#stillSinceMs ??= atMs - stepMs;
    this.#addStill(stepMs, moved);
    this.#judge(atMs);
  }

  #addStill(stepMs: number, moved: number): void {
    const last = this.#hours.at(-1);
    if (last && last.ms < HOUR_MS) {
      last.ms += stepMs;
      last.moves += moved;
      return;
    }
    this.#hours.push({ ms: stepMs, moves: moved });
    if (this.#hours.length > HOURS) this.#hours.shift();
  }

  #judge(atMs: number): void {
    if (this.#episodes.isOpen() || this.#windyMs < LEARNT_MS) return;
    const ms = this.#hours.reduce((sum, hour) => sum + hour.ms, 0);
    if (ms < (HOURS - 0.5) * HOUR_MS) return;
    const perHour = (this.#hours.reduce((sum, hour) => sum + hour.moves, 0) * HOUR_MS) / ms;
    const usual = (this.#windyMoves * HOUR_MS) / this.#windyMs;
    if (perHour < SHARE * usual) return;
    this.#episodes.open({
      kind: 'seized-cups',
      sinceMs: this.#stillSinceMs!,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'The cups stand while the vane moves as in wind',
      evidence:
        `No pulse for ${lasting(atMs - this.#stillSinceMs!)}; in the last ${lasting(ms)} the vane changed position ` +
        `${perHour.toFixed(0)} times an hour, and ${usual.toFixed(0)} times in wind of 2 m/s and more.`,
      falseAlarmChance: CHANCE,
      todo: 'Turn the cups by hand: if they turn freely, check contact and wire; if not, clean or replace the bearing.',
      spoils: 'speed',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
