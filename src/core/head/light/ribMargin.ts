import type { Board } from '../../boards/index.ts';
import type { DiscPlan, RibCost } from '../../disc/index.ts';
import { channelLevels } from '../circuit/levels.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import { detectorOver } from './background.ts';
import { lightLevel } from './lightLevel.ts';
import { spreadAcross } from './edgeSpread.ts';
import { seenAsDrawn, seenNeighbours, windowEdges, type SeenTrack } from './seenTrack.ts';

type Rib = DiscPlan['ribs'][number];
type Window = DiscPlan['tracks'][number]['windows'][number];

/** Where in each position light is weighed: its middle, and halfway to either boundary. [positions] */
const WEIGHED_AT = [0.25, 0.5, 0.75];

/** Threshold that is taken where the circuit has none between lit and dark; the design is refused for that later. [-] */
const ANY_THRESHOLD = 0.5;

/** Light that a rib adds to a channel, which is less than none. [-] at [deg of the pattern] */
type Shadow = (angleDeg: number) => number;

/** Light at which a channel is called lit on this disc. [-] */
function litAbove(disc: DiscPlan, head: RibHead): number {
  const { spec, circuit, board } = head;
  const behind = { ...spec, detector: detectorOver(spec, disc, circuit) };
  const { risingLight } = channelLevels(behind, circuit, board);
  return risingLight > 0 && risingLight < 1 ? risingLight : ANY_THRESHOLD;
}

/** What a rib's cost depends on besides the disc. */
export type RibHead = {
  readonly spec: HeadSpec;
  readonly circuit: CircuitSpec;
  readonly board: Board;
};

/** Turns a rib written a whole turn away to where its window is. */
function holds(window: Window, rib: Rib): boolean {
  const inRing = window.innerRadiusMm <= rib.innerRadiusMm && rib.outerRadiusMm <= window.outerRadiusMm;
  const middle = (rib.fromDeg + rib.toDeg) / 2;
  return (
    inRing && [-360, 0, 360].some((turn) => window.fromDeg < middle + turn && middle + turn < window.toDeg)
  );
}

/** A disc as its head sees it: light on each track, and how a rib more would dim it. */
class RibView {
  readonly #disc: DiscPlan;
  readonly #head: RibHead;
  readonly #litAbove: number;
  readonly #seen = new Map<number, SeenTrack>();
  readonly #neighbours = new Map<number, ReturnType<typeof seenNeighbours>>();

  constructor(disc: DiscPlan, head: RibHead) {
    this.#disc = disc;
    this.#head = head;
    this.#litAbove = litAbove(disc, head);
  }

  #seenOn(track: number): SeenTrack {
    const seen = this.#seen.get(track) ?? seenAsDrawn(this.#disc, track, this.#head.spec);
    this.#seen.set(track, seen);
    return seen;
  }

  #neighboursOf(track: number): ReturnType<typeof seenNeighbours> {
    const { aperture, penumbra = null } = this.#head.spec;
    const found =
      this.#neighbours.get(track) ?? seenNeighbours(this.#disc, track, { aperture, penumbra, radialSdMm: 0 });
    this.#neighbours.set(track, found);
    return found;
  }

  /** The shadow of a rib of one track on the channels that look at another, or at the same. */
  #shadow(rib: Rib, at: { readonly track: number; readonly window: Window }, onto: number): Shadow {
    const { aperture } = this.#head.spec;
    const open = windowEdges(this.#disc, at.track, [at.window], aperture);
    const ribbed = { ...this.#disc, ribs: [...this.#disc.ribs, rib] };
    const narrowed = windowEdges(ribbed, at.track, [at.window], aperture);
    const through = (seen: SeenTrack, angle: number): number =>
      lightLevel({ ...seen, ...narrowed, spill: [] }, angle) -
      lightLevel({ ...seen, ...open, spill: [] }, angle);
    if (at.track === onto) return (angle) => through(this.#seenOn(onto), angle);
    const parts = this.#neighboursOf(onto).filter(({ track }) => track === at.track);
    return (angle) => parts.reduce((sum, { seen, share }) => sum + share(0) * through(seen, angle), 0);
  }

  /** The largest share of a margin between light and threshold that a rib takes from one track's channels. [-] */
  #takenFrom(onto: number, rib: Rib, shadow: Shadow): number {
    const seen = this.#seenOn(onto);
    const { channels, positions } = this.#disc.code;
    const stepDeg = 360 / positions;
    // Beyond its own ends a rib dims as far as the spot reaches.
    const reachDeg =
      (Math.asin(Math.min(1, (seen.spread.reachMm + seen.widestMoveMm) / seen.radiusMm)) * 180) / Math.PI;
    let most = 0;
    for (const { track, angleDeg } of channels) {
      if (track !== onto) continue;
      const first = Math.floor((rib.fromDeg - reachDeg - angleDeg) / stepDeg) - 1;
      const last = Math.ceil((rib.toDeg + reachDeg - angleDeg) / stepDeg);
      for (let position = first; position <= Math.min(last, first + positions - 1); position++) {
        for (const part of WEIGHED_AT) {
          const angle = (position + part) * stepDeg + angleDeg;
          const margin = lightLevel(seen, angle) - this.#litAbove;
          if (margin > 0) most = Math.max(most, -shadow(angle) / margin);
        }
      }
    }
    return most;
  }

  /** The largest share of any margin that a rib takes, over all channels and the whole turn. [-] */
  mostTaken(rib: Rib): number {
    const across = spreadAcross(this.#head.spec.aperture);
    for (const { track, windows } of this.#disc.tracks) {
      const window = windows.find((one) => holds(one, rib));
      if (!window) continue;
      const near = this.#disc.tracks.filter(
        ({ midRadiusMm }) =>
          midRadiusMm + across.reachMm > rib.innerRadiusMm &&
          midRadiusMm - across.reachMm < rib.outerRadiusMm,
      );
      return Math.max(
        0,
        ...near.map((looked) =>
          this.#takenFrom(looked.track, rib, this.#shadow(rib, { track, window }, looked.track)),
        ),
      );
    }
    return 0;
  }
}

/**
 * What a rib costs a head: the largest share that its shadow takes of the margin between light and threshold.
 *
 * Weighed for every channel whose spot the rib or its window reaches, at three places of each position over which it
 * passes. A rib that takes all of a margin, or more, hides a window.
 *
 * @param head - Detector, light and aperture, circuit and controller.
 * @returns Of a disc, and of a rib on it: the share taken, 0 where no spot sees it. [-]
 * @source derived: (light without − light with) / (light without − light called lit).
 * @check src/core/head/light/ribMargin.test.ts (each channel's light, read all round the turn)
 */
export function ribMargin(head: RibHead): RibCost {
  return (disc) => {
    const view = new RibView(disc, head);
    return (rib) => view.mostTaken(rib);
  };
}
