import { Episodes } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { percent } from '../saying.ts';
import { sunElevationDeg, type SunPlace } from '../supply/sun.ts';
import type { HourDetector, HourLight } from './hourLight.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Light in the dark, of what would be read as lit, that counts as raised. [-] */
const RAISED = 0.25;
/** How far back the darkest hours are looked for, so that a night is among them. [ms] */
const FLOOR_MS = 2 * DAY_MS;
/** Days with raised hours, and hours in all, from which it is told, within this time. [-], [ms] */
const DAYS = 3;
const HOURS = 5;
const WITHIN_MS = 6 * DAY_MS;
/** Share of the raised hours that must have the sun up. [-] */
const BY_DAY = 0.8;
/** Chance in a year: dark counts of a closed head do not rise by a quarter of the threshold by day only. [-] */
const CHANCE = 0.01;

interface Kept {
  readonly startMs: number;
  readonly dark: readonly (number | null)[];
}

/** Daylight that gets into the head. */
export class AmbientLeak implements HourDetector {
  readonly #episodes = new Episodes();
  readonly #limits: readonly number[];
  readonly #place: SunPlace | null;
  #hours: Kept[] = [];
  #raised: { readonly startMs: number; readonly by: number }[] = [];

  /** @param limits - Light at which each channel is called lit. [-] */
  constructor(limits: readonly number[], place: SunPlace | null) {
    this.#limits = limits;
    this.#place = place;
  }

  hour({ startMs, endMs, dark, isFlooded }: HourLight): void {
    this.#hours.push({ startMs, dark });
    this.#hours = this.#hours.filter((hour) => hour.startMs > startMs - FLOOR_MS);
    const by = isFlooded ? 1 : this.#raisedBy(dark);
    if (by > RAISED) this.#raised.push({ startMs, by });
    this.#raised = this.#raised.filter((hour) => hour.startMs > startMs - WITHIN_MS);
    const last = this.#raised.at(-1);
    if (this.#episodes.isOpen() && (!last || startMs - last.startMs > 3 * DAY_MS))
      this.#episodes.close((last?.startMs ?? startMs - WITHIN_MS) + HOUR_MS);
    if (by > RAISED) this.#judge(endMs);
  }

  /** How far the dark is above the darkest hours, as a share of what is read as lit, mean of the channels. [-] */
  #raisedBy(dark: readonly (number | null)[]): number {
    const raised = dark.flatMap((light, channel) => {
      if (light === null) return [];
      const known = this.#hours.flatMap((hour) => hour.dark[channel] ?? []);
      return [(light - Math.min(...known)) / this.#limits[channel]!];
    });
    return raised.length === 0 ? 0 : raised.reduce((a, b) => a + b, 0) / raised.length;
  }

  #judge(atMs: number): void {
    const days = new Set(this.#raised.map(({ startMs }) => Math.floor(startMs / DAY_MS)));
    if (days.size < DAYS || this.#raised.length < HOURS || this.#episodes.isOpen()) return;
    const place = this.#place;
    const heights = place
      ? this.#raised.map(({ startMs }) => sunElevationDeg(place, startMs + HOUR_MS / 2))
      : [];
    if (place && heights.filter((deg) => deg > 0).length < BY_DAY * heights.length) return;
    const most = this.#raised.reduce((a, b) => (b.by > a.by ? b : a));
    const hour = new Date(most.startMs).getUTCHours();
    const height = place
      ? `, the sun ${Math.round(sunElevationDeg(place, most.startMs + HOUR_MS / 2))}° high`
      : '';
    this.#episodes.open({
      kind: 'ambient-leak',
      sinceMs: this.#raised[0]!.startMs,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'Daylight gets into the head',
      evidence:
        `In ${this.#raised.length} hours of ${days.size} days, none of them at night, the dark channels rise; ` +
        (most.by >= 1
          ? `at worst, about ${hour} h UTC${height}, dark reads as lit.`
          : `at worst, about ${hour} h UTC${height}, to ${percent(most.by)} of what is read as lit.`),
      falseAlarmChance: CHANCE,
      todo: 'Close the housing against light from that side, matt black inside; until then believe only the nights.',
      spoils: 'heading',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
