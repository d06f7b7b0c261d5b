import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { lasting } from '../saying.ts';
import { sunElevationDeg, type SunPlace } from './sun.ts';

const DAY_MS = 86_400_000;
/** Starts within a week that make a pattern. [-]; common practice, no source */
const STARTS = 3;
const WEEK_MS = 7 * DAY_MS;
/** Chance of three in a week where a sound station starts four times a year: Poisson, 52 weeks. [-] */
const CHANCE = 0.005;

interface Start {
  readonly atMs: number;
  readonly outMs: number;
}

/** A controller that loses its supply again and again, and when it does. */
export class LostPower implements Detector {
  readonly #episodes = new Episodes();
  readonly #place: SunPlace | null;
  #starts: Start[] = [];
  #isFirst = true;

  /** @param place - Tells night from day; `null` where it is not stated. [deg] */
  constructor(place: SunPlace | null) {
    this.#place = place;
  }

  add({ atMs, gapMs, stepMs, isRestart }: Seen): void {
    const last = this.#starts.at(-1);
    if (last && this.#episodes.isOpen() && atMs - last.atMs > WEEK_MS) this.#episodes.close(last.atMs);
    const isStart = isRestart && !this.#isFirst;
    this.#isFirst = false;
    if (!isStart) return;
    this.#starts.push({ atMs, outMs: gapMs > 0 ? gapMs : stepMs });
    this.#starts = this.#starts.filter((start) => atMs - start.atMs < WEEK_MS).slice(-100);
    if (this.#starts.length < STARTS) return;
    const { title, todo, evidence } = this.#pattern();
    if (this.#episodes.isOpen()) return this.#episodes.update({ evidence });
    const sinceMs = this.#starts[0]!.atMs - this.#starts[0]!.outMs;
    const none = { channels: [], positions: [], spoils: 'nothing', daysLeft: null } as const;
    this.#episodes.open({
      kind: 'lost-power',
      sinceMs,
      noticedMs: atMs,
      title,
      evidence,
      todo,
      falseAlarmChance: CHANCE,
      ...none,
    });
  }

  #pattern(): { title: string; todo: string; evidence: string } {
    const place = this.#place;
    const outs = this.#starts.map(({ atMs, outMs }) => atMs - outMs);
    const nights = place ? outs.filter((atMs) => sunElevationDeg(place, atMs) < 0).length : 0;
    const longest = Math.max(...this.#starts.map(({ outMs }) => outMs));
    const byNight = nights >= 0.8 * outs.length;
    return {
      title: byNight
        ? 'The controller loses its supply at night'
        : 'The controller loses its supply again and again',
      evidence:
        `${this.#starts.length} starts within a week, out for up to ${lasting(longest)}` +
        (place ? `; ${nights} of them with the sun below the horizon.` : '.'),
      todo: byNight
        ? 'The battery does not last the night: measure it at dawn; more panel, more battery or less light current.'
        : 'Look for a loose plug or a supply that sags when lights or radio switch on.',
    };
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
