import { VanewrightError } from '../../error/index.ts';
import { turnBetween, type Degrees } from '../../units/index.ts';
import { dampingFromOvershoot, releasedVane, vaneMotion, type VaneMotion } from '../../wind/index.ts';
import { medianOf } from '../levels/spread.ts';

/** One heading of the vane at a moment. */
export interface TimedHeading {
  readonly timeS: number;
  /** `null` = not read. [deg] */
  readonly headingDeg: Degrees | null;
}

/** A release test taken off a log. */
export interface ReleaseTest {
  readonly motion: VaneMotion;
  /** Where the vane came to rest, in the stream. [deg] */
  readonly restDeg: Degrees;
  /** Release angle first, then each turning point, from the line of rest. [deg] */
  readonly turningPointsDeg: readonly Degrees[];
  readonly timesS: readonly number[];
}

/** The readings must tell this many steps of the swing apart. [-]; own choice */
const LEAST_STEPS = 4;
/** The vane is released while it still stands within this share of where it was held. [-] */
const HELD_SHARE = 0.08;
/** A turning point this small beside the release is noise. [-] */
const LEAST_SWING = 0.03;

/**
 * Damping, overshoot and wavelengths of a vane that was held off the wind in a steady stream and let go, from a log of
 * its headings.
 *
 * @param readings - From holding to rest, many a second. [s], [deg]
 * @param speedMPerS - Speed of the stream. [m/s], > 0
 * @param resolutionDeg - Smallest change the readings can show: the step, or less with interpolation. [deg]
 * @throws `fit/release-too-coarse`, `fit/release-not-seen`, and what `vaneMotion` throws.
 * @check src/core/fit/release/release.test.ts (a damped swing in closed form)
 */
export function releaseTest(
  readings: readonly TimedHeading[],
  speedMPerS: number,
  resolutionDeg: Degrees,
): ReleaseTest {
  const read = readings.flatMap(({ timeS, headingDeg }) =>
    headingDeg === null ? [] : [{ timeS, headingDeg }],
  );
  if (read.length < 20) throw notSeen(`${read.length} readings`);
  const last = read.slice(-Math.max(5, read.length >> 3));
  const restDeg =
    last[0]!.headingDeg +
    medianOf(last.map(({ headingDeg }) => turnBetween(last[0]!.headingDeg, headingDeg)));
  const off = read.map(({ headingDeg }) => turnBetween(restDeg, headingDeg));
  const first = off.slice(0, Math.max(3, read.length >> 5));
  const held = medianOf(first);
  if (Math.abs(held) < LEAST_STEPS * resolutionDeg) throw tooCoarse(held, resolutionDeg);
  const release = off.findLastIndex(
    (angle, i) => i < off.length / 2 && Math.abs(angle - held) <= HELD_SHARE * Math.abs(held),
  );
  if (release < 0) throw notSeen('a vane that is never held still');
  const { points, times } = turningPoints(
    off,
    read.map(({ timeS }) => timeS),
    release,
    held,
    resolutionDeg,
  );
  const motion = vaneMotion({ speedMPerS, turningPointsDeg: points, timesS: times });
  return { motion, restDeg: ((restDeg % 360) + 360) % 360, turningPointsDeg: points, timesS: times };
}

/** The release and every turning point after it; each is the top of the parabola through the samples around it. */
function turningPoints(
  off: readonly number[],
  timesS: readonly number[],
  release: number,
  held: number,
  resolutionDeg: number,
): { points: number[]; times: number[] } {
  const points = [held];
  const times = [timesS[release]!];
  const least = Math.max(resolutionDeg, LEAST_SWING * Math.abs(held));
  let side = -Math.sign(held);
  for (let i = release + 1; i < off.length;) {
    // From one pass through rest to the next.
    while (i < off.length && off[i]! * side <= 0) i++;
    let end = i;
    let top = i;
    while (end < off.length && off[end]! * side > 0) {
      if (off[end]! * side > (off[top] ?? 0) * side) top = end;
      end++;
    }
    if (i >= off.length || Math.abs(off[top]!) < least) break;
    const { value, time } = summit(off, timesS, top);
    points.push(value);
    times.push(time);
    side = -side;
    i = end;
  }
  if (points.length > 1) times[0] = releasedAt(points, times);
  return { points, times };
}

/**
 * Moment of release: the swing itself tells how long before it was seen to leave its place.
 *
 * With damping ζ a vane has gone the share HELD_SHARE after x natural periods, and turns after 1/(2 √(1 − ζ²)).
 */
function releasedAt(points: readonly number[], times: readonly number[]): number {
  const overshoot = Math.abs(points[1]! / points[0]!);
  if (!(overshoot > 0 && overshoot < 1)) return times[0]!;
  const damping = dampingFromOvershoot(overshoot);
  const turns = 0.5 / Math.sqrt(1 - damping ** 2);
  let [low, high] = [0, turns];
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (releasedVane(middle, damping) > 1 - HELD_SHARE) low = middle;
    else high = middle;
  }
  return times[1]! - ((times[1]! - times[0]!) * turns) / (turns - low);
}

function summit(
  off: readonly number[],
  timesS: readonly number[],
  top: number,
): { value: number; time: number } {
  const [a, b, c] = [off[top - 1], off[top]!, off[top + 1]];
  if (a === undefined || c === undefined) return { value: b, time: timesS[top]! };
  const bend = a - 2 * b + c;
  if (bend === 0) return { value: b, time: timesS[top]! };
  const share = Math.max(-1, Math.min(1, (a - c) / (2 * bend)));
  return { value: b - ((a - c) * share) / 4, time: timesS[top]! + share * (timesS[top + 1]! - timesS[top]!) };
}

function tooCoarse(held: number, resolutionDeg: number): VanewrightError {
  return new VanewrightError({
    code: 'fit/release-too-coarse',
    what: 'The readings are too coarse for the swing, or the vane was never held off the wind.',
    where: 'readings',
    got: `held ${Math.abs(held).toFixed(1)} deg off, readings to ${resolutionDeg.toFixed(2)} deg`,
    allowed: `at least ${LEAST_STEPS} steps of the reading, and no more than 20 deg`,
    fix: 'Fit a recorded turn with its edge curves first, so that readings are finer, or film the vane from above.',
  });
}

function notSeen(got: string): VanewrightError {
  return new VanewrightError({
    code: 'fit/release-not-seen',
    what: 'The release cannot be seen in the readings.',
    where: 'readings',
    got,
    allowed:
      'a second of holding still, the release, and the swing until it rests, 20 readings a second or more',
    fix: 'Log every 20 ms, hold the vane 10 to 15 deg off for a second, let go, and wait until it rests.',
  });
}
