import { Episodes } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { percent } from '../saying.ts';
import type { HourDetector, HourLight } from './hourLight.ts';
import { trendOf } from './trend.ts';

const DAY_MS = 86_400_000;
/** Hours of a day that must tell a channel's light. [-] */
const HOURS_LEAST = 4;
/** Days that are learnt from, and days that make the trend. [-] */
const LEARNT = 7;
const TREND_DAYS = 21;
/** Light left, of that at first, from which it is told, and above which it is over; 0.95 is where it begins to count. [-] */
const DIM = 0.8;
const MENDED = 0.9;
const BEGINS = 0.95;
/** Stands for all channels together. */
const ALL = -1;
/** Chance in a year: a day's level scatters by a hundredth, so that a fifth is 20 sigma; what is left is dirt. [-] */
const CHANCE = 0.01;

interface Channel {
  hours: number[];
  days: { readonly day: number; readonly light: number }[];
  first: number[];
  belowMs: number | null;
}

/** Lights that fade: how much is left, how fast it goes and when the margin is gone. */
export class DimLight implements HourDetector {
  readonly #episodes = new Episodes();
  readonly #limits: readonly number[];
  readonly #channels: Channel[];
  #day = -Infinity;

  /** @param limits - Light at which each channel is no longer called lit. [-] */
  constructor(limits: readonly number[]) {
    this.#limits = limits;
    this.#channels = limits.map(() => ({ hours: [], days: [], first: [], belowMs: null }));
  }

  hour({ startMs, lit }: HourLight): void {
    const day = Math.floor(startMs / DAY_MS);
    if (day !== this.#day) {
      if (this.#day > 0) this.#dayEnded(day * DAY_MS);
      this.#day = day;
    }
    for (const [channel, light] of lit.entries())
      if (light !== null) this.#channels[channel]!.hours.push(light);
  }

  #dayEnded(atMs: number): void {
    for (const channel of this.#channels) this.#closeDay(channel);
    const dim = this.#channels.flatMap((channel, i) => (this.#leftOf(channel) < DIM ? [i] : []));
    const allDim = dim.length >= 3 && dim.length >= 0.75 * this.#channels.length;
    if (allDim) this.#tell(ALL, dim, atMs);
    else for (const channel of dim) if (!this.#episodes.isOpen(ALL)) this.#tell(channel, [channel], atMs);
    if (dim.length === 0) this.#over(ALL, 0, atMs);
    for (const i of this.#channels.keys()) if (!dim.includes(i)) this.#over(i, i, atMs);
  }

  #over(subject: number, channel: number, atMs: number): void {
    if (this.#leftOf(this.#channels[channel]!) >= MENDED) this.#episodes.close(atMs - DAY_MS, subject);
  }

  /** The day's level: four fifths of its hours are no brighter. */
  #closeDay(channel: Channel): void {
    const { hours } = channel;
    channel.hours = [];
    if (hours.length < HOURS_LEAST) return;
    const light = [...hours].sort((a, b) => a - b)[Math.floor(0.8 * (hours.length - 1))]!;
    if (channel.first.length < LEARNT) channel.first.push(light);
    channel.days.push({ day: this.#day, light });
    if (channel.days.length > TREND_DAYS) channel.days.shift();
    const isBelow = this.#leftOf(channel) < BEGINS;
    channel.belowMs = isBelow ? (channel.belowMs ?? this.#day * DAY_MS) : null;
  }

  #leftOf({ days, first }: Channel): number {
    if (first.length < LEARNT) return 1;
    return days.at(-1)!.light / [...first].sort((a, b) => a - b)[LEARNT >> 1]!;
  }

  #tell(subject: number, channels: readonly number[], atMs: number): void {
    const worst = [...channels].sort(
      (a, b) => this.#leftOf(this.#channels[a]!) - this.#leftOf(this.#channels[b]!),
    )[0]!;
    const watched = this.#channels[worst]!;
    const { slope, error } = trendOf(watched.days.map(({ day, light }) => [day, light]));
    const light = watched.days.at(-1)!.light;
    const fades = slope < -3 * error && slope < 0;
    const daysLeft = fades ? Math.max(0, (light - this.#limits[worst]!) / -slope) : null;
    const evidence =
      `Channel ${worst} has ${percent(this.#leftOf(watched))} of its first light` +
      (fades
        ? ` and loses ${percent(-slope)} ± ${percent(error)} a day; below ${percent(this.#limits[worst]!)} it reads dark, in ${Math.round(daysLeft!)} days.`
        : `; below ${percent(this.#limits[worst]!)} it reads dark.`);
    if (this.#episodes.isOpen(subject))
      return this.#episodes.update({ evidence, daysLeft, channels }, subject);
    const all = subject === ALL;
    this.#episodes.open(
      {
        kind: 'dim-light',
        sinceMs: watched.belowMs ?? atMs,
        noticedMs: atMs,
        channels,
        positions: [],
        title: all ? 'All lights are dim' : `The light of channel ${worst} is dim`,
        evidence,
        falseAlarmChance: CHANCE,
        todo: all
          ? 'Measure the supply at the head, and wipe lights and sensors.'
          : `Wipe light and sensor of channel ${worst}; if that does not help, replace the light.`,
        spoils: 'nothing',
        daysLeft,
      },
      subject,
    );
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
