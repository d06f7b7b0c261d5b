import { cupCalibration, type CupCalibration } from '../../wind/index.ts';
import { degToRad, radToDeg, turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import { factorOf, solved } from '../angles/cholesky.ts';
import { clockOffset, type EvenSeries } from './alignClocks.ts';
import { legsOf, type Leg, type TrackPoint } from './legs.ts';
import type { TimedValue } from './referenceSeries.ts';
import { cupsRefusal } from './refusals.ts';

/** Cups fitted on a car run. */
export interface CarRun {
  readonly calibration: CupCalibration;
  readonly legs: readonly Leg[];
  /** Seconds of the track that were left out as turns, braking or standing. [s] */
  readonly droppedS: number;
  /** What must be added to the pulses' clock to get the track's. [ms] */
  readonly clockAddMs: number;
  /** Wind over the road during the run: where it came from and how fast. [deg], [m/s] */
  readonly windFromDeg: Degrees;
  readonly windMPerS: number;
  readonly cautions: readonly string[];
}

/** Legs that a fit needs, and that must go each way. [-]; own choice */
const LEAST_LEGS = 4;
/** Beside a car the air is faster than over open ground by some per cent: no fit can see it. */
const CAR_CAUTIONS = [
  'Air is faster around a car: hold the cups as far above the roof or ahead of the bonnet as is safe, at least half the car’s height away.',
  'One person drives and another records; keep to the rules of the road.',
];

/** A series at equal steps from points in time, straight between them. */
function even(points: readonly TimedValue[], stepMs: number): EvenSeries {
  const startMs = points[0]!.timeMs;
  const count = Math.floor((points.at(-1)!.timeMs - startMs) / stepMs) + 1;
  let at = 0;
  const values = Array.from({ length: count }, (_, i) => {
    const time = startMs + i * stepMs;
    while (at < points.length - 2 && points[at + 1]!.timeMs <= time) at++;
    const [a, b] = [points[at]!, points[at + 1] ?? points[at]!];
    const span = b.timeMs - a.timeMs;
    return span > 0 ? a.value + ((b.value - a.value) * (time - a.timeMs)) / span : a.value;
  });
  return { startMs, stepMs, values };
}

/** Rate of the pulses over two steps around each. [Hz] */
function rates({ startMs, stepMs, values }: EvenSeries): EvenSeries {
  const rate = values.map((_, i) => {
    const [from, to] = [Math.max(0, i - 2), Math.min(values.length - 1, i + 2)];
    return to > from ? ((values[to]! - values[from]!) * 1000) / ((to - from) * stepMs) : 0;
  });
  return { startMs, stepMs, values: rate };
}

/**
 * Speed = offset + path · rate from a car run with a position track.
 *
 * The clocks are aligned by where rate and speed look alike; turns, braking and standing are dropped; what is left are
 * legs of steady speed. All legs, both ways, are fitted together with the wind over the road as two more unknowns, so
 * that it neither adds nor takes.
 *
 * @param pulses - Running count of the pulses by the instrument's clock. [ms], [-]
 * @param track - Points of the track by its own clock. [ms], [deg]
 * @throws `fit/clocks-not-aligned`, `fit/too-few-legs`, `fit/one-way-only`, and what `cupCalibration` throws.
 * @source air along the road = ground speed + headwind; the square of the wind across adds to it, as in any triangle.
 * @check src/core/fit/cups/carRun.test.ts
 */
export function carRun(pulses: readonly TimedValue[], track: readonly TrackPoint[]): CarRun {
  const stepMs = 500;
  const rate = rates(even(pulses, stepMs));
  const ground = even(
    track.map(({ timeMs, speedMPerS }) => ({ timeMs, value: speedMPerS })),
    stepMs,
  );
  const { addMs } = clockOffset(rate, ground);
  const { legs, droppedS } = legsOf(track, { ...rate, startMs: rate.startMs + addMs });
  if (legs.length < LEAST_LEGS) throw tooFewLegs(legs.length);
  if (!goesBothWays(legs)) throw oneWayOnly(legs);
  const wind = windOver(legs);
  const air = legs.map((leg) => airSpeed(leg, wind));
  return {
    calibration: cupCalibration(
      legs.map(({ rateHz }) => rateHz),
      air,
    ),
    legs,
    droppedS,
    clockAddMs: addMs,
    windFromDeg: wrapDegrees(radToDeg(Math.atan2(wind.east, wind.north))),
    windMPerS: Math.hypot(wind.north, wind.east),
    cautions: CAR_CAUTIONS,
  };
}

/** Wind over the road by where it comes from. [m/s] */
interface RoadWind {
  readonly north: number;
  readonly east: number;
}

function goesBothWays(legs: readonly Leg[]): boolean {
  return legs.some(({ courseDeg }) => Math.abs(turnBetween(legs[0]!.courseDeg, courseDeg)) > 120);
}

/** Speed of the air past the cups on a leg. [m/s] */
function airSpeed({ courseDeg, groundMPerS }: Leg, { north, east }: RoadWind): number {
  const course = degToRad(courseDeg);
  const ahead = groundMPerS + north * Math.cos(course) + east * Math.sin(course);
  const across = east * Math.cos(course) - north * Math.sin(course);
  return Math.hypot(ahead, across);
}

/** Rounds after which the wind across the road no longer changes anything. */
const ROUNDS = 6;

/** Wind that makes all legs lie best on one line: least squares for offset, path and both parts of the wind. */
function windOver(legs: readonly Leg[]): RoadWind {
  let wind: RoadWind = { north: 0, east: 0 };
  for (let round = 0; round < ROUNDS; round++) {
    const weights = new Float64Array(16);
    const right = new Float64Array(4);
    for (const leg of legs) {
      const course = degToRad(leg.courseDeg);
      const [n, e] = [Math.cos(course), Math.sin(course)];
      // Ground speed and what the wind across adds, = offset + path · rate − headwind.
      const along = leg.groundMPerS + wind.north * n + wind.east * e;
      const target = leg.groundMPerS + airSpeed(leg, wind) - along;
      const row = [1, leg.rateHz, -n, -e];
      for (let i = 0; i < 4; i++) {
        right[i]! += row[i]! * target;
        for (let j = 0; j < 4; j++) weights[4 * i + j]! += row[i]! * row[j]!;
      }
    }
    // Along a straight road the wind across is unseen: it is held near nothing. [m/s], sd 20
    for (const i of [2, 3]) weights[5 * i]! += 1e-3;
    const factor = factorOf({ size: 4, values: weights });
    if (!factor) return wind;
    const found = solved(factor, right);
    wind = { north: found[2]!, east: found[3]! };
  }
  return wind;
}

function tooFewLegs(found: number): Error {
  return cupsRefusal('fit/too-few-legs', {
    what: 'Too few legs of steady speed are left after turns and braking were dropped.',
    where: 'track',
    got: `${found} legs`,
    allowed: `${LEAST_LEGS} or more, of 8 s each`,
    fix: 'Hold each of five speeds for half a minute on a straight road, and drive back the same way.',
  });
}

function oneWayOnly(legs: readonly Leg[]): Error {
  return cupsRefusal('fit/one-way-only', {
    what: 'The run goes one way only, so that the wind over the road cannot be told from the cups’ own factor.',
    where: 'track',
    got: `courses near ${legs[0]!.courseDeg.toFixed(0)} deg`,
    allowed: 'legs both ways along the road',
    fix: 'Drive the same road back at the same speeds, within a quarter of an hour.',
  });
}
