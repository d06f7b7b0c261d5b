import { Episodes } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { percent } from '../saying.ts';
import type { HourDetector, HourLight } from './hourLight.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Loss of light in an hour, of the usual, that counts. [-] */
const LOSS = 0.15;
/** Share of the channels that must lose it together. [-] */
const TOGETHER = 0.75;
/** Hours in a row that make one time, and times within ten days from which it is told. [-], [ms] */
const HOURS = 2;
const TIMES = 2;
const WITHIN_MS = 10 * DAY_MS;
/** Longer than this it is no dew. [h] */
const LONGEST = 20;
/** Chance in a year that all lights lose so much together, twice, and come back. [-] */
const CHANCE = 0.01;

/** Dew or water in the head: all lights fall together for some hours and come back. */
export class Condensation implements HourDetector {
  readonly #episodes = new Episodes();
  readonly #usual: (number | null)[];
  #run: { startMs: number; hours: number; loss: number } | null = null;
  #times: { readonly startMs: number; readonly endMs: number; readonly loss: number }[] = [];

  /** @param channels - Of the head. [-] */
  constructor(channels: number) {
    this.#usual = Array.from({ length: channels }, () => null);
  }

  hour({ startMs, lit }: HourLight): void {
    const last = this.#times.at(-1);
    if (last && this.#episodes.isOpen() && startMs - last.endMs > WITHIN_MS / 2)
      this.#episodes.close(last.endMs);
    const known = lit.flatMap((light, channel) => {
      const usual = this.#usual[channel];
      return light === null || usual === null || usual === undefined ? [] : [1 - light / usual];
    });
    const lost = known.filter((loss) => loss > LOSS).length;
    const isWet = known.length >= 2 && lost >= TOGETHER * known.length;
    if (!isWet || (this.#run?.hours ?? 0) > LONGEST) this.#learn(lit);
    const loss = known.length > 0 ? known.reduce((a, b) => a + b, 0) / known.length : 0;
    if (isWet) {
      this.#run ??= { startMs, hours: 0, loss: 0 };
      this.#run.hours++;
      this.#run.loss = Math.max(this.#run.loss, loss);
    } else if (known.length >= 2) this.#dried(startMs);
  }

  #learn(lit: readonly (number | null)[]): void {
    for (const [channel, light] of lit.entries()) {
      if (light === null) continue;
      const usual = this.#usual[channel];
      this.#usual[channel] = usual === null || usual === undefined ? light : usual + 0.05 * (light - usual);
    }
  }

  #dried(atMs: number): void {
    const run = this.#run;
    this.#run = null;
    if (!run || run.hours < HOURS || run.hours > LONGEST) return;
    this.#times.push({ startMs: run.startMs, endMs: atMs, loss: run.loss });
    this.#times = this.#times.filter(({ startMs }) => startMs > atMs - WITHIN_MS).slice(-40);
    if (this.#times.length < TIMES) return;
    const evidence =
      `${this.#times.length} times within ten days all lights fell together, by up to ${percent(Math.max(...this.#times.map(({ loss }) => loss)))}, ` +
      `and came back within hours; mostly from about ${new Date(run.startMs).getUTCHours()} h UTC on.`;
    if (this.#episodes.isOpen()) return this.#episodes.update({ evidence });
    this.#episodes.open({
      kind: 'condensation',
      sinceMs: this.#times[0]!.startMs,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'Water condenses in the head',
      evidence,
      falseAlarmChance: CHANCE,
      todo: 'Give the housing a small vent at its lowest point, seal the cable gland, and put fresh desiccant in.',
      spoils: 'nothing',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
