import { lightLevel, type SeenTrack, type SwitchLights } from '../../head/index.ts';
import { radToDeg, wrapDegrees } from '../../units/index.ts';

/** Which way the disc angle goes while the shaft is turned. */
export type Sense = 'growing' | 'falling';

/** Where a channel changes in one turn. */
export interface Switches {
  /** Pattern angle of each change, and what the channel reads clockwise of it. */
  readonly switches: readonly { readonly atDeg: number; readonly litAfter: boolean }[];
  /** What it reads all the way round when it never changes. */
  readonly litThroughout: boolean;
}

/** Bracketed roots are halved until this narrow: far below any real edge. [deg] */
const ROOT_DEG = 1e-7;
/** Share of a bracket kept by each golden-section step. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Golden-section steps that narrow a bracket to a ten-thousandth of itself, where a high or low is flat to 1e-8. */
const GOLDEN_STEPS = 20;

/**
 * Changes of a channel whose edges share the spot, found between the highs and lows of its light.
 *
 * A channel starts from a place where its light leaves no doubt, and carries its state through the hysteresis.
 * Where there is no such place it never changes, and reads dark, as after switching on.
 */
export function softSwitches(seen: SeenTrack, lights: SwitchLights, sense: Sense): Switches {
  const way = sense === 'growing' ? 1 : -1;
  const knots = knotsOf(seen);
  if (way < 0) knots.reverse();
  const { risingLight, fallingLight } = lights;
  const start = knots.findIndex(({ light }) => light >= risingLight || light <= fallingLight);
  if (start < 0) return { switches: [], litThroughout: false };
  let lit = knots[start]!.light >= risingLight;
  const switches: { atDeg: number; litAfter: boolean }[] = [];
  for (let step = 0; step < knots.length; step++) {
    const from = knots[(start + step) % knots.length]!;
    const to = knots[(start + step + 1) % knots.length]!;
    if (lit ? to.light > fallingLight : to.light < risingLight) continue;
    const atDeg = crossing(seen, from, to, lit ? fallingLight : risingLight, way);
    lit = !lit;
    // Passed the other way round, a channel that goes lit is dark clockwise of that place.
    switches.push({ atDeg, litAfter: lit === way > 0 });
  }
  return { switches, litThroughout: lit };
}

interface Knot {
  readonly atDeg: number;
  readonly light: number;
}

/** Places in order of angle between which the light only rises or only falls: where edges come, pass and go, and extremes. */
function knotsOf(seen: SeenTrack): Knot[] {
  const { edgesDeg } = seen;
  // Parts of one neighbour have their edges at the same angles: those of its first part stand for all.
  const neighbours = seen.spill.map((spill) => spill.seen);
  const first = neighbours.filter((part, i) => part.edgesDeg !== neighbours[i - 1]?.edgesDeg);
  const places = [seen, ...first].flatMap(edgePlaces);
  const middles = edgesDeg.map((edge, i) => edge + wrapDegrees((edgesDeg[i + 1] ?? edgesDeg[0]!) - edge) / 2);
  const angles = [...places, ...middles, 0, 90, 180, 270].map(wrapDegrees).sort((a, b) => a - b);
  const knots = angles.map((atDeg) => ({ atDeg, light: lightLevel(seen, atDeg) }));
  const extremes = knots.flatMap((knot, i) => {
    const before = knots.at(i - 1)!;
    const after = knots[(i + 1) % knots.length]!;
    const high = knot.light > before.light && knot.light > after.light;
    const low = knot.light < before.light && knot.light < after.light;
    return high || low ? [extremeBetween(seen, before.atDeg, after.atDeg, high ? 1 : -1)] : [];
  });
  return [...knots, ...extremes].sort((a, b) => a.atDeg - b.atDeg);
}

/** Where each edge comes into the spot, passes its middle and leaves it, and halfway between. [deg] */
function edgePlaces({ edgesDeg, movesMm, radiusMm, spread }: SeenTrack): number[] {
  const offsets = [-1, -0.5, 0, 0.5, 1].map((share) => share * spread.reachMm);
  return edgesDeg.flatMap((edge, i) =>
    offsets.map((offset) => edge + arcDeg(movesMm[i]! - offset, radiusMm)),
  );
}

/** Angle that a sideways distance spans, a quarter of a turn at most. [deg] */
function arcDeg(distanceMm: number, radiusMm: number): number {
  return radToDeg(Math.asin(Math.max(-1, Math.min(1, distanceMm / radiusMm))));
}

/** The high (`sign` 1) or low (-1) of the light between two angles, clockwise from one to the other. */
function extremeBetween(seen: SeenTrack, fromDeg: number, toDeg: number, sign: 1 | -1): Knot {
  let from = fromDeg;
  let span = wrapDegrees(toDeg - fromDeg);
  const height = (angle: number): number => sign * lightLevel(seen, angle);
  for (let step = 0; step < GOLDEN_STEPS; step++) {
    const keep = span * GOLDEN;
    if (height(from + span - keep) < height(from + keep)) from += span - keep;
    span = keep;
  }
  const atDeg = wrapDegrees(from + span / 2);
  return { atDeg, light: lightLevel(seen, atDeg) };
}

/** Where the light passes a threshold between two knots, by halving. [deg] */
function crossing(seen: SeenTrack, from: Knot, to: Knot, threshold: number, way: number): number {
  let near = from.atDeg;
  let span = way * wrapDegrees(way * (to.atDeg - from.atDeg));
  const rises = to.light > from.light;
  while (Math.abs(span) > ROOT_DEG) {
    span /= 2;
    const light = lightLevel(seen, near + span);
    if (rises ? light < threshold : light > threshold) near += span;
  }
  return wrapDegrees(near + span / 2);
}
