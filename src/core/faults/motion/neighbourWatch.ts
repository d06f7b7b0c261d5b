import { turnBetween } from '../../units/index.ts';
import { HeadingSum } from '../../wind/index.ts';
import { Episodes } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { Habit } from './habit.ts';

const HOUR_MS = 3_600_000;
/** Hours that are learnt from. [-] */
const LEARNT = 14 * 24;
/** In spreads of an hour's difference. [-]; hours are alike for a while, so the sum that is told is a long one */
const RULE = { allowed: 1, told: 24 };
/** Smallest turn that is told. [deg] */
const LEAST_DEG = 8;
/** Stations whose hours differ more than this are not in one wind, and nothing is told of them. [deg]; own choice */
const ONE_WIND_DEG = 30;
/** Chance in a year of two sound stations in one wind. [-]; bench/faults.ts */
const CHANCE = 0.02;

interface Hour {
  readonly hour: number;
  readonly sum: HeadingSum;
  count: number;
}

/** Compares a station's directions with those of one nearby: the surest way to see a slipped clamp. */
export class NeighbourWatch {
  readonly #episodes = new Episodes();
  readonly #name: string;
  #own: Hour = { hour: -Infinity, sum: new HeadingSum(), count: 0 };
  #other: Hour = { hour: -Infinity, sum: new HeadingSum(), count: 0 };
  readonly #habit = new Habit(LEARNT, RULE);
  readonly #waiting = new Map<number, { own?: number; other?: number }>();

  /** @param name - Of the station nearby. */
  constructor(name: string) {
    this.#name = name;
  }

  /** One direction of this station. [ms UTC], [deg] */
  add(atMs: number, headingDeg: number | null): void {
    this.#own = this.#took('own', this.#own, atMs, headingDeg);
  }

  /** One direction of the station nearby. [ms UTC], [deg] */
  addNeighbour(atMs: number, headingDeg: number | null): void {
    this.#other = this.#took('other', this.#other, atMs, headingDeg);
  }

  #took(which: 'own' | 'other', last: Hour, atMs: number, headingDeg: number | null): Hour {
    const hour = Math.floor(atMs / HOUR_MS);
    let now = last;
    if (hour !== last.hour) {
      this.#ended(which, last);
      now = { hour, sum: new HeadingSum(), count: 0 };
    }
    if (headingDeg !== null) {
      now.sum.add(headingDeg);
      now.count++;
    }
    return now;
  }

  #ended(which: 'own' | 'other', { hour, sum, count }: Hour): void {
    const heading = count > 0 ? sum.mean().headingDeg : null;
    if (heading === null) return;
    const pair = { ...this.#waiting.get(hour), [which]: heading };
    this.#waiting.set(hour, pair);
    // The two may come one after the other, a year each: two numbers an hour are kept until the other comes.
    if (pair.own === undefined || pair.other === undefined) return;
    this.#waiting.delete(hour);
    this.#compare(hour, turnBetween(pair.other, pair.own));
  }

  #compare(hour: number, offDeg: number): void {
    const turned = this.#habit.add(hour * HOUR_MS, offDeg);
    if (!turned) return;
    const { sinceMs, byDeg, count } = turned;
    if (Math.abs(byDeg) < LEAST_DEG || this.#habit.home!.spreadDeg > ONE_WIND_DEG) return;
    this.#episodes.close(sinceMs);
    if (turned.way === 'back') return;
    const { meanDeg, spreadDeg } = this.#habit.home!;
    this.#episodes.open({
      kind: 'slipped-clamp',
      sinceMs,
      noticedMs: (hour + 1) * HOUR_MS,
      channels: [],
      positions: [],
      title: `The clamp has slipped: directions turned by ${Math.round(Math.abs(byDeg))}° against ${this.#name}`,
      evidence:
        `Over ${count} hours ${Math.abs(byDeg).toFixed(0)}° ${byDeg > 0 ? 'clockwise' : 'counter-clockwise'} of before; ` +
        `the usual difference is ${turnBetween(0, meanDeg).toFixed(0)}° with a spread of ${spreadDeg.toFixed(0)}° an hour.`,
      falseAlarmChance: CHANCE,
      todo: 'Turn the clamp back to its mark, tighten it, and set north anew (vanewright fit north); where it sits well, look at the other station.',
      spoils: 'heading',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
