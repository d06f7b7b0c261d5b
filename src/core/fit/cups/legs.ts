import { degToRad, radToDeg, turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { EvenSeries } from './alignClocks.ts';

/** One point of a position track. */
export interface TrackPoint {
  readonly timeMs: number;
  readonly speedMPerS: number;
  /** Course over ground. [deg] */
  readonly courseDeg: Degrees;
}

/** A leg of steady course and speed. */
export interface Leg {
  readonly fromMs: number;
  readonly toMs: number;
  readonly courseDeg: Degrees;
  readonly groundMPerS: number;
  readonly rateHz: number;
}

/** What counts as steady: no faster change of speed and course, no slower ride, no shorter leg. Own choice */
const STEADY = { mPerS2: 0.35, degPerS: 3, leastMPerS: 2, leastMs: 8000 } as const;
/** Longest piece that becomes one leg: a long road gives several points. [ms] */
const LEG_MS = 15_000;
const EARTH_RADIUS_M = 6_371_000;

/** Speed [m/s] and course [deg] from positions alone, each from the point before to the point after. */
export function trackFromPositions(
  positions: readonly {
    readonly timeMs: number;
    readonly latitudeDeg: number;
    readonly longitudeDeg: number;
  }[],
): TrackPoint[] {
  return positions.flatMap((point, i): TrackPoint[] => {
    const [a, b] = [positions[i - 1] ?? point, positions[i + 1] ?? point];
    const seconds = (b.timeMs - a.timeMs) / 1000;
    if (seconds <= 0) return [];
    const north = degToRad(b.latitudeDeg - a.latitudeDeg) * EARTH_RADIUS_M;
    const east =
      degToRad(turnBetween(a.longitudeDeg, b.longitudeDeg)) *
      EARTH_RADIUS_M *
      Math.cos(degToRad(point.latitudeDeg));
    return [
      {
        timeMs: point.timeMs,
        speedMPerS: Math.hypot(north, east) / seconds,
        courseDeg: wrapDegrees(radToDeg(Math.atan2(east, north))),
      },
    ];
  });
}

/** Change a second from a point to one a second or more later; `null` at the end. */
function isSteady(track: readonly TrackPoint[], i: number): boolean {
  const now = track[i]!;
  if (now.speedMPerS < STEADY.leastMPerS) return false;
  const around = track.filter((_, k) => Math.abs(k - i) <= 2);
  const [a, b] = [around[0]!, around.at(-1)!];
  const seconds = (b.timeMs - a.timeMs) / 1000;
  if (seconds <= 0) return false;
  return (
    Math.abs(b.speedMPerS - a.speedMPerS) / seconds <= STEADY.mPerS2 &&
    Math.abs(turnBetween(a.courseDeg, b.courseDeg)) / seconds <= STEADY.degPerS
  );
}

/** Mean of a series between two moments; `null` where it does not cover them. */
function meanOver({ startMs, stepMs, values }: EvenSeries, fromMs: number, toMs: number): number | null {
  const from = Math.ceil((fromMs - startMs) / stepMs);
  const to = Math.floor((toMs - startMs) / stepMs);
  if (from < 0 || to >= values.length || to - from < 4) return null;
  return values.slice(from, to + 1).reduce((sum, value) => sum + value, 0) / (to - from + 1);
}

/** Legs of a track with the rate of the cups on each [Hz], and how much of the ride was dropped [s]. */
export function legsOf(track: readonly TrackPoint[], rate: EvenSeries): { legs: Leg[]; droppedS: number } {
  const legs: Leg[] = [];
  let usedMs = 0;
  for (let i = 0; i < track.length;) {
    if (!isSteady(track, i)) {
      i++;
      continue;
    }
    let end = i;
    while (
      end + 1 < track.length &&
      isSteady(track, end + 1) &&
      track[end + 1]!.timeMs - track[i]!.timeMs <= LEG_MS
    )
      end++;
    const some = track.slice(i, end + 1);
    const leg = legOf(some, rate);
    if (leg) {
      legs.push(leg);
      usedMs += leg.toMs - leg.fromMs;
    }
    i = end + 1;
  }
  const allMs = track.length > 1 ? track.at(-1)!.timeMs - track[0]!.timeMs : 0;
  return { legs, droppedS: (allMs - usedMs) / 1000 };
}

function legOf(points: readonly TrackPoint[], rate: EvenSeries): Leg | null {
  const [fromMs, toMs] = [points[0]!.timeMs, points.at(-1)!.timeMs];
  if (toMs - fromMs < STEADY.leastMs) return null;
  const rateHz = meanOver(rate, fromMs, toMs);
  if (rateHz === null) return null;
  const north =
    points.reduce((sum, p) => sum + p.speedMPerS * Math.cos(degToRad(p.courseDeg)), 0) / points.length;
  const east =
    points.reduce((sum, p) => sum + p.speedMPerS * Math.sin(degToRad(p.courseDeg)), 0) / points.length;
  return {
    fromMs,
    toMs,
    courseDeg: wrapDegrees(radToDeg(Math.atan2(east, north))),
    groundMPerS: Math.hypot(north, east),
    rateHz,
  };
}
