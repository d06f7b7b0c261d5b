import { turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { SampleColumns } from '../period/sampleColumns.ts';
import { badReading, noReadings, timeNotRising } from '../refusal.ts';

/** What the single-pass unwrapping of directions gives. */
export interface UnwrappedMean {
  /** In [0, 360); `null` when a step of exactly half a turn leaves the sense of turning open. [deg] */
  readonly headingDeg: Degrees | null;
  /** Population standard deviation; `null` as above. [deg] */
  readonly spreadDeg: Degrees | null;
  /** Furthest counter-clockwise and clockwise readings of the chain; `null` as above. [deg] */
  readonly extremes: {
    readonly fromDeg: Degrees;
    readonly toDeg: Degrees;
    readonly rangeDeg: Degrees;
  } | null;
  /** `null` when the method may be used as it stands; else why not. */
  readonly caution: 'slow-sampling' | 'gap' | 'half-turn' | null;
}

/** Longest time between readings for which the method is meant: 1 s, with half a second for jitter. [ms] */
const LONGEST_STEP_MS = 1500;

/**
 * Mean and spread of direction by following the vane round (Mitsuta's method): each reading is moved by
 * whole turns to lie within half a turn of the one before.
 *
 * Right only for readings 1 s apart or closer: never for hourly or 10-minute means, where it goes wrong
 * without a sign. Readings further apart than that are followed, but the result carries a caution.
 *
 * @source EPA-454/R-99-005 (2000), section 6.2.1; the formula is a value from memory.
 * @check test/published/epa-454-r-99-005/direction.test.ts
 */
export class UnwrappedSum {
  private readings = 0;
  private firstHeading = 0;
  private firstAtMs = 0;
  private lastHeading = 0;
  private lastUnwrapped = 0;
  private lastAtMs = 0;
  private mean = 0;
  private squares = 0;
  private least = 0;
  private most = 0;
  private halfTurns = 0;
  private gaps = 0;

  /**
   * @param atMs - Instant of the reading, later than the one before. [ms UTC]
   * @param headingDeg - Clockwise from true north; any finite value. [deg]
   * @throws `wind/bad-reading` when either is not finite; `wind/time-not-rising`.
   */
  add(atMs: number, headingDeg: Degrees): void {
    if (!Number.isFinite(headingDeg)) {
      throw badReading('UnwrappedSum.add(headingDeg)', headingDeg, 'a finite angle in degrees');
    }
    if (!Number.isFinite(atMs)) throw badReading('UnwrappedSum.add(atMs)', atMs, 'a finite time in ms');
    if (this.readings === 0) return this.start(atMs, wrapDegrees(headingDeg));
    if (atMs <= this.lastAtMs) throw timeNotRising('UnwrappedSum.add(atMs)', this.lastAtMs, atMs);
    if (atMs - this.lastAtMs > LONGEST_STEP_MS) this.gaps++;
    const heading = headingDeg >= 0 && headingDeg < 360 ? headingDeg : wrapDegrees(headingDeg);
    const step = shortestStep(heading - this.lastHeading);
    if (Math.abs(step) === 180) this.halfTurns++;
    this.lastHeading = heading;
    const unwrapped = this.lastUnwrapped + step;
    this.readings++;
    const away = unwrapped - this.mean;
    this.mean += away / this.readings;
    this.squares += away * (unwrapped - this.mean);
    if (unwrapped < this.least) this.least = unwrapped;
    if (unwrapped > this.most) this.most = unwrapped;
    this.lastUnwrapped = unwrapped;
    this.lastAtMs = atMs;
  }

  private start(atMs: number, heading: Degrees): void {
    this.readings = 1;
    this.firstHeading = this.lastHeading = this.lastUnwrapped = this.mean = this.least = this.most = heading;
    this.firstAtMs = this.lastAtMs = atMs;
  }

  /**
   * Sum of some of a list of checked samples.
   *
   * @param columns - [ms UTC], [deg]
   * @param places - Which samples, in order of time. [-]
   */
  static ofReadings({ atMs, headingDeg }: SampleColumns, places: Int32Array): UnwrappedSum {
    const sum = new UnwrappedSum();
    const readings = places.length;
    if (readings === 0) return sum;
    const first = places[0]!;
    const last = places[readings - 1]!;
    sum.start(atMs[first]!, headingDeg[first]!);
    const chain = new Float64Array(readings);
    let heading = headingDeg[first]!;
    let before = atMs[first]!;
    let unwrapped = 0;
    let total = 0;
    let least = 0;
    let most = 0;
    for (let k = 1; k < readings; k++) {
      const place = places[k]!;
      const next = headingDeg[place]!;
      const step = shortestStep(next - heading);
      if (step === 180 || step === -180) sum.halfTurns++;
      if (atMs[place]! - before > LONGEST_STEP_MS) sum.gaps++;
      before = atMs[place]!;
      heading = next;
      unwrapped += step;
      chain[k] = unwrapped;
      total += unwrapped;
      if (unwrapped < least) least = unwrapped;
      if (unwrapped > most) most = unwrapped;
    }
    const mean = total / readings; // of the turn since the first reading
    let squares = 0;
    for (let k = 0; k < readings; k++) squares += (chain[k]! - mean) ** 2;
    const { firstHeading } = sum;
    return Object.assign(sum, {
      readings,
      squares,
      mean: firstHeading + mean,
      least: firstHeading + least,
      most: firstHeading + most,
      lastHeading: heading,
      lastUnwrapped: firstHeading + unwrapped,
      lastAtMs: atMs[last]!,
    });
  }

  /**
   * Takes in the readings that follow this sum's own in time.
   *
   * @throws `wind/time-not-rising` when the other sum does not begin after this one ends.
   */
  merge(later: UnwrappedSum): void {
    if (later.readings === 0) return;
    if (this.readings === 0) {
      Object.assign(this, later);
      return;
    }
    if (later.firstAtMs <= this.lastAtMs) {
      throw timeNotRising('UnwrappedSum.merge(later)', this.lastAtMs, later.firstAtMs);
    }
    if (later.firstAtMs - this.lastAtMs > LONGEST_STEP_MS) this.gaps++;
    const step = turnBetween(this.lastHeading, later.firstHeading);
    if (step === 180) this.halfTurns++;
    const shift = this.lastUnwrapped + step - later.firstHeading; // the later chain, joined on to this one
    const away = later.mean + shift - this.mean;
    const both = this.readings + later.readings;
    this.squares += later.squares + (away * away * this.readings * later.readings) / both;
    this.mean += (away * later.readings) / both;
    this.readings = both;
    this.least = Math.min(this.least, later.least + shift);
    this.most = Math.max(this.most, later.most + shift);
    this.halfTurns += later.halfTurns;
    this.gaps += later.gaps;
    this.lastHeading = later.lastHeading;
    this.lastUnwrapped = later.lastUnwrapped + shift;
    this.lastAtMs = later.lastAtMs;
  }

  /** @throws `wind/no-readings` when nothing was added. */
  result(): UnwrappedMean {
    if (this.readings === 0) throw noReadings('UnwrappedSum.result()');
    if (this.halfTurns > 0) {
      return { headingDeg: null, spreadDeg: null, extremes: null, caution: 'half-turn' };
    }
    const slow = this.gaps > 0 && this.lastAtMs - this.firstAtMs > LONGEST_STEP_MS * (this.readings - 1);
    return {
      headingDeg: wrapDegrees(this.mean),
      spreadDeg: Math.sqrt(this.squares / this.readings),
      extremes: {
        fromDeg: wrapDegrees(this.least),
        toDeg: wrapDegrees(this.most),
        rangeDeg: this.most - this.least,
      },
      caution: slow ? 'slow-sampling' : this.gaps > 0 ? 'gap' : null,
    };
  }
}

/** A step between two headings in [0, 360), made the shorter way; half a turn keeps its sign. [deg] */
function shortestStep(raw: Degrees): Degrees {
  if (raw > 180) return raw - 360;
  return raw < -180 ? raw + 360 : raw;
}

/**
 * Unwrapped mean and spread of evenly spaced readings.
 *
 * @param headings - Clockwise from true north, in order of time. [deg], n ≥ 1
 * @param intervalMs - Time between two readings; above 1500 ms the result carries a caution. [ms], > 0
 * @throws as `UnwrappedSum`.
 * @source as `UnwrappedSum`.
 * @check test/published/epa-454-r-99-005/direction.test.ts
 */
export function unwrappedMean(headings: readonly Degrees[], intervalMs: number): UnwrappedMean {
  const sum = new UnwrappedSum();
  for (const [i, heading] of headings.entries()) sum.add(i * intervalMs, heading);
  return sum.result();
}
