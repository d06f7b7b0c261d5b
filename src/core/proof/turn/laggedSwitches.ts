import { lightLevel, type SeenTrack, type Signal, type SwitchLights } from '../../head/index.ts';
import { radToDeg, wrapDegrees } from '../../units/index.ts';
import type { Sense, Switches } from './softMarks.ts';

/** How fast the shaft turns and how slowly the sensor follows. */
export interface Following {
  /** [deg/s], above 0 */
  readonly rateDegPerS: number;
  readonly riseMs: number;
  readonly fallMs: number;
  /** What follows the light with the lag, and the light that stands for a value of it. */
  readonly drive: Signal['drive'];
}

/**
 * Where a sensor that lags has come on its way to a goal that stands still; both in one unit.
 *
 * @param tauS - Time constant; 0 follows at once. [s] @param seconds - Time that has passed. [s]
 * @source derived: dy/dt = (g − y)/τ.
 * @check src/core/proof/turn/laggedTurn.test.ts
 */
export function followed(value: number, goal: number, tauS: number, seconds: number): number {
  return tauS > 0 ? goal + (value - goal) * Math.exp(-seconds / tauS) : goal;
}

/** Steps in which an edge passes the spot. */
const STEPS_AN_EDGE = 256;

/**
 * Changes of a channel while the shaft turns evenly, its sensor following the light with a lag.
 *
 * Where no edge is in the spot the approach is an exponential in closed form; while one passes, the light is taken as even
 * over short steps, each with its own exponential. Two turns are made, and the second told.
 *
 * @param seen - The track as built. @param lights - Light at which the channel changes when it turns slowly. [-]
 * @source derived: dy/dt = (g − y)/τ, with one τ for rising and another for falling.
 * @check src/core/proof/turn/laggedTurn.test.ts (small steps of time; ω τ for a slow ramp)
 */
export function laggedSwitches(
  seen: SeenTrack,
  lights: SwitchLights,
  sense: Sense,
  following: Following,
): Switches {
  const way = sense === 'growing' ? 1 : -1;
  const { drive } = following;
  const [upper, lower] = [drive(lights.risingLight), drive(lights.fallingLight)];
  const pieces = piecesOf(seen, way);
  let value = drive(lightLevel(seen, pieces[0]!.fromDeg));
  let lit = value >= upper;
  let switches: { atDeg: number; litAfter: boolean }[] = [];
  for (let turn = 0; turn < 2; turn++) {
    switches = [];
    for (const { fromDeg, spanDeg } of pieces) {
      const goal = drive(lightLevel(seen, fromDeg + (way * spanDeg) / 2));
      const tau = (goal > value ? following.riseMs : following.fallMs) / 1000;
      const seconds = spanDeg / following.rateDegPerS;
      const next = followed(value, goal, tau, seconds);
      const threshold = lit ? lower : upper;
      if (lit ? next <= threshold && value > threshold : next >= threshold && value < threshold) {
        const after = tau > 0 ? -tau * Math.log((threshold - goal) / (value - goal)) : 0;
        const passed = Math.min(spanDeg, after * following.rateDegPerS);
        lit = !lit;
        switches.push({ atDeg: wrapDegrees(fromDeg + way * passed), litAfter: lit === way > 0 });
      }
      value = next;
    }
  }
  return { switches, litThroughout: lit };
}

/** A piece of a turn over which the light is taken as even. */
interface Piece {
  readonly fromDeg: number;
  readonly spanDeg: number;
}

/** A turn in pieces: short ones while an edge is in the spot, whole stretches between. */
function piecesOf(seen: SeenTrack, way: 1 | -1): Piece[] {
  const cuts = [seen, ...seen.spill.map((spill) => spill.seen)].flatMap(
    ({ edgesDeg, movesMm, radiusMm, spread }) =>
      edgesDeg.flatMap((edge, i) =>
        Array.from({ length: STEPS_AN_EDGE + 1 }, (_, step) => {
          const x = spread.reachMm * (1 - (2 * step) / STEPS_AN_EDGE) - movesMm[i]!;
          return wrapDegrees(edge - radToDeg(Math.asin(Math.max(-1, Math.min(1, x / radiusMm)))));
        }),
      ),
  );
  const places = [...new Set([0, ...cuts])].sort((a, b) => way * (a - b));
  return places.map((fromDeg, i) => {
    const to = places[i + 1] ?? places[0]! + way * 360;
    return { fromDeg, spanDeg: way * (to - fromDeg) };
  });
}
