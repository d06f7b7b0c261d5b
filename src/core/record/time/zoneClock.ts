import { VanewrightError } from '../../error/index.ts';

/** A local time turned into an instant. */
export interface ZonedInstant {
  /** [ms UTC] */
  readonly atMs: number;
  /** `twice`: the clock was put back and this time came twice; `missing`: it was put forward over this time. */
  readonly how: 'once' | 'twice' | 'missing';
}

const DAY_MS = 86_400_000;
/** Zones change at quarter hours. [ms] */
const SLOT_MS = 900_000;

function formatOf(zone: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      calendar: 'gregory',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
      era: 'narrow',
    });
  } catch {
    throw new VanewrightError({
      code: 'record/time-zone',
      what: 'There is no time zone of that name.',
      where: 'time zone',
      got: zone.slice(0, 40),
      allowed: 'UTC, an offset such as +01:00, or a name such as Europe/Berlin',
      fix: 'Use the name of the nearest large city, such as Europe/Berlin, or UTC.',
    });
  }
}

/** Fixed offset of `+01:00` or `UTC`, or `null` for a name. [ms] */
function fixedOffset(zone: string): number | null {
  if (/^(utc|gmt|z)$/i.test(zone)) return 0;
  const parts = /^([+-])(\d{2}):?(\d{2})$/.exec(zone);
  if (!parts || Number(parts[2]) > 14 || Number(parts[3]) > 59) return null;
  return (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3])) * 60_000;
}

/** Turns local times into instants, summer time resolved once. */
export class ZoneClock {
  readonly #fixed: number | null;
  readonly #format: Intl.DateTimeFormat | null;
  /** Offsets of the instants looked up lately. [ms] */
  #looked = new Map<number, number>();

  /**
   * @param zone - `UTC`, `+01:00`, or a name of the time zone database such as `Europe/Berlin`.
   * @throws `record/time-zone`
   */
  constructor(zone: string) {
    this.#fixed = fixedOffset(zone);
    this.#format = this.#fixed === null ? formatOf(zone) : null;
  }

  /** Local time less UTC at an instant. [ms] */
  offsetAt(atMs: number): number {
    if (this.#fixed !== null) return this.#fixed;
    const day = Math.floor(atMs / DAY_MS) * DAY_MS;
    const from = this.#known(day);
    // Most days begin and end with the same offset; only on the others each quarter of an hour is looked up.
    return from === this.#known(day + DAY_MS) ? from : this.#known(Math.floor(atMs / SLOT_MS) * SLOT_MS);
  }

  #known(atMs: number): number {
    const known = this.#looked.get(atMs);
    if (known !== undefined) return known;
    if (this.#looked.size > 50_000) this.#looked = new Map();
    const offset = this.#lookUp(atMs);
    this.#looked.set(atMs, offset);
    return offset;
  }

  #lookUp(atMs: number): number {
    const parts = new Map(this.#format!.formatToParts(atMs).map(({ type, value }) => [type, Number(value)]));
    const of = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type)!;
    const local = Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second'));
    return local - atMs;
  }

  /**
   * The instant of a local time.
   *
   * A time that came twice is the later one only when the sample before was not earlier than the first of them.
   *
   * @param localMs - Local date and time as if it were UTC. [ms]
   * @param beforeMs - Instant of the sample before, or `null`. [ms UTC]
   * @check src/core/record/time/zoneClock.test.ts
   */
  instantOf(localMs: number, beforeMs: number | null): ZonedInstant {
    if (this.#fixed !== null) return { atMs: localMs - this.#fixed, how: 'once' };
    const before = this.offsetAt(localMs - DAY_MS);
    const after = this.offsetAt(localMs + DAY_MS);
    if (before === after) return { atMs: localMs - before, how: 'once' };
    const earlier = localMs - Math.max(before, after);
    const later = localMs - Math.min(before, after);
    const isEarlier = this.offsetAt(earlier) === localMs - earlier;
    const isLater = this.offsetAt(later) === localMs - later;
    if (isEarlier && isLater) {
      return { atMs: beforeMs !== null && beforeMs >= earlier ? later : earlier, how: 'twice' };
    }
    if (!isEarlier && !isLater) return { atMs: localMs - before, how: 'missing' };
    return { atMs: isEarlier ? earlier : later, how: 'once' };
  }
}
