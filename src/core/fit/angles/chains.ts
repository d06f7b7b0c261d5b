import type { Crossing } from '../wiring/followed.ts';
import { medianOf } from '../levels/spread.ts';
import type { Sighting } from './motionFilter.ts';
import type { DiscEdge } from './unknowns.ts';

/** Sightings during which the hand turned smoothly one way. */
export interface Chain {
  readonly sightings: readonly Sighting[];
  /** Crossing of each sighting. */
  readonly crossings: readonly Crossing[];
}

/** A pause this much longer than the neighbours' is a stop of the hand. [-]; own choice */
const STOP_TIMES = 2.6;
/** Fewer sightings than this in a row say nothing about how the hand moved. [-] */
const LEAST_SIGHTINGS = 3;
/** Nothing is timed better than this. [deg] */
const LEAST_SIGMA_DEG = 0.005;

/** Disc edges by boundary and channel. */
export type EdgeOf = (boundary: number, channel: number) => DiscEdge;

/** Where the drawing has the shaft at a crossing, counted on over turns. [deg] */
export function drawnAt({ count, boundary, channel }: Crossing, edgeOf: EdgeOf, boundaries: number): number {
  return edgeOf(boundary, channel).drawnDeg + (360 * (count - boundary)) / boundaries;
}

/** Pause before each crossing for the angle passed. [ms/deg] */
function slowness(crossings: readonly Crossing[], drawn: readonly number[]): number[] {
  return crossings.map((crossing, i) => {
    if (i === 0) return 0;
    const turned = Math.abs(drawn[i]! - drawn[i - 1]!);
    return (crossing.timeMs - crossings[i - 1]!.timeMs) / Math.max(turned, 1e-3);
  });
}

/** Places before which a chain must be broken: another stretch, the other way round, or a stop. */
function breaksOf(crossings: readonly Crossing[], drawn: readonly number[]): boolean[] {
  const slow = slowness(crossings, drawn);
  const usualStep = medianOf(drawn.slice(1).map((deg, i) => Math.abs(deg - drawn[i]!)));
  return crossings.map((crossing, i) => {
    const last = crossings[i - 1];
    if (!last || last.stretch !== crossing.stretch || last.way !== crossing.way) return true;
    const turned = (drawn[i]! - drawn[i - 1]!) * crossing.way;
    if (turned < -usualStep || turned > 4 * usualStep + 1e-9) return true;
    const around = slow.filter(
      (_, k) => Math.abs(k - i) <= 4 && k !== i && k > 0 && crossings[k]!.stretch === crossing.stretch,
    );
    return turned > 0.2 * usualStep && slow[i]! > STOP_TIMES * medianOf(around);
  });
}

/** Speed around each crossing of a chain, from two crossings before to two after. [deg/ms] */
function speeds(crossings: readonly Crossing[], drawn: readonly number[]): number[] {
  return crossings.map((_, i) => {
    let [from, to] = [Math.max(0, i - 2), Math.min(crossings.length - 1, i + 2)];
    while (crossings[to]!.timeMs - crossings[from]!.timeMs <= 0 && (from > 0 || to < crossings.length - 1)) {
      from = Math.max(0, from - 1);
      to = Math.min(crossings.length - 1, to + 1);
    }
    return (drawn[to]! - drawn[from]!) / Math.max(1e-3, crossings[to]!.timeMs - crossings[from]!.timeMs);
  });
}

/**
 * Crossings as chains of sightings of smooth motion.
 */
export function chainsOf(crossings: readonly Crossing[], edgeOf: EdgeOf, boundaries: number): Chain[] {
  const drawn = crossings.map((crossing) => drawnAt(crossing, edgeOf, boundaries));
  const isBreak = breaksOf(crossings, drawn);
  const chains: Chain[] = [];
  for (let from = 0; from < crossings.length;) {
    let to = from + 1;
    while (to < crossings.length && !isBreak[to]) to++;
    const some = crossings.slice(from, to);
    const at = drawn.slice(from, to);
    const speed = speeds(some, at);
    // A normal pace of one step a unit of time keeps the numbers of the filter near 1.
    const unit = Math.max(1e-3, (some.at(-1)!.timeMs - some[0]!.timeMs) / Math.max(1, some.length - 1));
    if (some.length >= LEAST_SIGHTINGS) {
      const sightings = some.map((crossing, i): Sighting => {
        const edge = edgeOf(crossing.boundary, crossing.channel);
        const sigma = Math.hypot(speed[i]! * crossing.sigmaMs, LEAST_SIGMA_DEG);
        return {
          time: (crossing.timeMs - some[0]!.timeMs) / unit,
          drawnDeg: at[i]!,
          variance: sigma * sigma,
          speed: speed[i]! * unit,
          row: edge.row,
        };
      });
      chains.push({ sightings, crossings: some });
    }
    from = to;
  }
  return chains;
}
