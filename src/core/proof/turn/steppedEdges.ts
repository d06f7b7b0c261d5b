import { lightLevel, type SeenTrack, type SwitchLights } from '../../head/index.ts';
import { degToRad, radToDeg } from '../../units/index.ts';
import type { Sense, Switches } from './softMarks.ts';

/**
 * Changes of a channel edge by edge: closed form where an edge has the spot to itself, a bracketed root beside it.
 *
 * Serves windows that ribs partly cover and marks somewhat narrower than the spot.
 *
 * @returns `null` where the light must be searched: marks so narrow that it may turn between their middles, or light of neighbours.
 * @source derived: at a lone edge the light is before + gain T(x); it switches where that is the threshold.
 */
export function steppedSwitches(seen: SeenTrack, lights: SwitchLights, sense: Sense): Switches | null {
  const { risingLight, fallingLight } = lights;
  if (seen.spill.length > 0) return null;
  const runs = runsOf(seen, lights);
  if (!runs) return null;
  const edges = runs.length;
  const way = sense === 'growing' ? 1 : -1;
  /** What the channel looks at once it has passed edge i: the run clockwise of it, or the one before. */
  const after = (i: number): number => runs.at(way > 0 ? i : i - 1)!.light;
  const start = runs.findIndex((_, i) => after(i) >= risingLight || after(i) <= fallingLight);
  if (start < 0) return { switches: [], litThroughout: false };
  let lit = after(start) >= risingLight;
  const switches: { atDeg: number; litAfter: boolean }[] = [];
  for (let step = 1; step <= edges; step++) {
    const i = (start + way * step + edges) % edges;
    if (lit ? after(i) > fallingLight : after(i) < risingLight) continue;
    const atDeg = crossing(seen, runs, i, lit ? fallingLight : risingLight);
    lit = !lit;
    // Passed the other way round, a channel that goes lit is dark clockwise of that place.
    switches.push({ atDeg, litAfter: lit === way > 0 });
  }
  return { switches, litThroughout: lit };
}

/** The stretch between an edge and the next. */
interface Run {
  /** Middle of the run, from the edge's own drawn angle on; may pass 360. [deg] */
  readonly middleDeg: number;
  /** Light at its middle. [-] */
  readonly light: number;
  /** True when a spot in it touches one of its two edges at most. */
  readonly isRoomy: boolean;
}

function runsOf(seen: SeenTrack, { risingLight, fallingLight }: SwitchLights): Run[] | null {
  const { edgesDeg, movesMm, radiusMm, spread, levels } = seen;
  const places = edgesDeg.map((edge, i) => degToRad(edge) * radiusMm + movesMm[i]!);
  const turnMm = 2 * Math.PI * radiusMm;
  const gaps = places.map((place, i) => (places[i + 1] ?? places[0]! + turnMm) - place);
  const runs: Run[] = [];
  for (const [i, gap] of gaps.entries()) {
    // A spot that holds both marks of an edge may see more light on the land than on the window.
    if (gap <= 0 || gap + gaps.at(i - 1)! < 2 * spread.reachMm) return null;
    const isRoomy = gap >= 2 * spread.reachMm;
    const middleDeg = radToDeg((places[i]! + gap / 2) / radiusMm);
    const light = isRoomy ? levels[i]! : lightLevel(seen, middleDeg);
    if (!isRoomy && light > fallingLight && light < risingLight) return null;
    runs.push({ middleDeg, light, isRoomy });
  }
  return runs;
}

/** Where the light passes a threshold about an edge. [deg] */
function crossing(seen: SeenTrack, runs: readonly Run[], edge: number, threshold: number): number {
  const run = runs[edge]!;
  const last = runs.at(edge - 1)!;
  if (run.isRoomy && last.isRoomy) {
    const share = (threshold - last.light) / seen.gains[edge]!;
    const sine = (seen.movesMm[edge]! - seen.spread.edgeAt(share)) / seen.radiusMm;
    return seen.edgesDeg[edge]! + radToDeg(Math.asin(sine));
  }
  const before = last.middleDeg - (edge === 0 ? 360 : 0);
  return bracketedRoot((angle) => lightLevel(seen, angle) - threshold, before, run.middleDeg);
}

/** Good enough a root: far below any real edge. [deg] */
const ROOT_DEG = 1e-7;
/** More steps than halving alone would need for that. */
const MOST_STEPS = 60;

/**
 * Root of a function that has unlike signs at both ends, by false position that halves the value of an end kept twice.
 *
 * @source the Illinois method: M. Dowell & P. Jarratt, BIT 11 (1971) 168.
 */
function bracketedRoot(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  for (let step = 0; step < MOST_STEPS && Math.abs(b - a) > ROOT_DEG && fa !== fb; step++) {
    // Every third step halves, so that a flat stretch cannot hold one end for long.
    const x = step % 3 === 2 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx * fb < 0) [a, fa] = [b, fb];
    else fa /= 2;
    [b, fb] = [x, fx];
  }
  return (a + b) / 2;
}
