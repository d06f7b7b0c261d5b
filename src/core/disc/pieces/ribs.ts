import { degToRad, radToDeg, wrapDegrees, type Degrees } from '../../units/index.ts';
import { leastDrawn, type LeastDrawn } from '../check/leastDrawn.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { RingSector } from '../discSpec.ts';
import { labelOfLand, landsOf, loosePieces, type Land, type LoosePiece } from './lands.ts';
import { materialGrid } from './materialGrid.ts';
import { HELD, pieceLabels } from './pieces.ts';
import { columnFrom, columnSpanDeg, rowCount, rowFrom, type PolarGrid } from './polarGrid.ts';
import { ribLength, type RibCost } from './ribCost.ts';

/** A rib as it is planned: at one edge of one window, from one of its ends. */
interface Reach {
  readonly track: number;
  readonly window: number;
  readonly edge: 'inner' | 'outer';
  readonly end: 'start' | 'end';
  readonly spanDeg: Degrees;
  readonly lengthMm: number;
}

/** Why a piece cannot be held. */
export type RibRefusal =
  | { readonly reason: 'no-room'; readonly bandMm: number; readonly widthMm: number }
  | { readonly reason: 'too-far'; readonly lengthMm: number; readonly longestMm: number }
  | { readonly reason: 'nothing-near' };

/** Outcome of holding every piece of a disc. */
export interface Holding {
  readonly plan: DiscPlan;
  /** Pieces that still come loose; n = 0 when all are held. */
  readonly loose: readonly { readonly piece: LoosePiece; readonly refusal: RibRefusal }[];
}

/** Middle share of a track's width that stays clear of ribs, for the sensor to look through. [-] */
const CLEAR_SHARE = 0.5;

/** Longest free rib, in widths of the rib: longer ones sag or snap. [-] @source common practice, no source. */
const LONGEST_IN_WIDTHS = 20;

/** True where a rib at one edge, or one at each, leaves the middle of the track clear and the window open. */
function hasRoom(bandMm: number, least: LeastDrawn): boolean {
  const width = least.wallMm;
  return width <= (bandMm * (1 - CLEAR_SHARE)) / 2 && bandMm - 2 * width >= least.windowMm;
}

/** Finds how a land of a loose piece can reach held material along its own track. */
class RibFinder {
  readonly #grid: PolarGrid;
  readonly #labels: Int32Array;
  readonly #least: LeastDrawn;

  constructor(grid: PolarGrid, labels: Int32Array, least: LeastDrawn) {
    this.#grid = grid;
    this.#labels = labels;
    this.#least = least;
  }

  /** Angle from the land's edge to where held material lies beyond a track's edge, within a window. [deg] */
  #freeSpanDeg(window: RingSector, edge: Reach['edge'], end: Reach['end']): Degrees | null {
    const grid = this.#grid;
    const columns = grid.anglesDeg.length;
    const row =
      edge === 'inner' ? rowFrom(grid, window.innerRadiusMm) - 1 : rowFrom(grid, window.outerRadiusMm);
    if (row < 0 || row >= rowCount(grid)) return null;
    const from = columnFrom(grid, window.fromDeg);
    const width = (columnFrom(grid, window.toDeg) - from + columns) % columns;
    let span = 0;
    for (let step = 0; step < width; step++) {
      const column = (from + (end === 'start' ? step : width - 1 - step)) % columns;
      if (this.#labels[row * columns + column] === HELD) return span;
      span += columnSpanDeg(grid, column);
    }
    return null;
  }

  /** The shortest rib from a land into the window on one side of it, or `null` when nothing held is within reach. */
  reach(land: Land, end: Reach['end'], edge: Reach['edge'], isFarLandHeld: boolean): Reach | null {
    const { track } = land;
    const index = end === 'start' ? land.after : land.before;
    const window = track.windows[index]!;
    const whole = window.toDeg - window.fromDeg;
    const radius = edge === 'inner' ? track.innerRadiusMm : track.outerRadiusMm;
    const free = this.#freeSpanDeg(window, edge, end) ?? (isFarLandHeld ? whole : null);
    if (free === null) return null;
    const overlapDeg = radToDeg(this.#least.landMm / radius);
    const gapDeg = radToDeg(this.#least.windowMm / track.innerRadiusMm);
    // A sliver of window beside a rib would not come out open: such a rib goes all the way.
    const spanDeg = free + overlapDeg + gapDeg > whole ? whole : free + overlapDeg;
    return { track: track.track, window: index, edge, end, spanDeg, lengthMm: degToRad(free) * radius };
  }
}

/** What is weighed when ribs are chosen: the disc as it is held so far, and what a rib on it costs. */
interface Round {
  readonly plan: DiscPlan;
  readonly finder: RibFinder;
  isHeld(land: Land): boolean;
  cost(rib: RingSector): number;
}

/** The rib that costs least; of those that cost the same, the shortest. */
function cheapest(reaches: readonly Reach[], { plan, cost }: Round): Reach[] {
  const weighed = reaches.map((reach) => ({ reach, cost: cost(ribSectors([reach], plan)[0]!) }));
  weighed.sort((a, b) => a.cost - b.cost || a.reach.lengthMm - b.reach.lengthMm);
  return weighed.slice(0, 1).map(({ reach }) => reach);
}

/** Ways to hold a piece from lands of its own, going one way round. */
function reachesOf(roomy: readonly Land[], end: Reach['end'], { plan, finder, isHeld }: Round): Reach[] {
  const lands = new Map(plan.tracks.map((track) => [track.track, landsOf(track)]));
  return roomy.flatMap((land) => {
    // Land i follows window i, so the land beyond the window after this one follows that window.
    const far = lands.get(land.track.track)!.at(end === 'start' ? land.after : land.before - 1)!;
    const reached = (['inner', 'outer'] as const).map((edge) => finder.reach(land, end, edge, isHeld(far)));
    return reached.filter((reach) => reach !== null);
  });
}

/** Ribs that hold a piece, one each way round where both are short enough, or why there is none. */
function ribsFor(piece: LoosePiece, round: Round): Reach[] | RibRefusal {
  const least = leastDrawn(round.plan.spec);
  const roomy = piece.lands.filter(({ track }) => hasRoom(track.outerRadiusMm - track.innerRadiusMm, least));
  const widthMm = least.wallMm;
  const [anyLand] = piece.lands;
  if (!anyLand) return { reason: 'nothing-near' };
  if (roomy.length === 0) {
    return { reason: 'no-room', bandMm: anyLand.track.outerRadiusMm - anyLand.track.innerRadiusMm, widthMm };
  }
  const found = (['start', 'end'] as const).map((end) => reachesOf(roomy, end, round));
  const all = found.flat();
  if (all.length === 0) return { reason: 'nothing-near' };
  const longestMm = LONGEST_IN_WIDTHS * widthMm;
  const ribs = found.flatMap((reaches) =>
    cheapest(
      reaches.filter(({ lengthMm }) => lengthMm <= longestMm),
      round,
    ),
  );
  if (ribs.length > 0) return ribs;
  return { reason: 'too-far', lengthMm: Math.min(...all.map(({ lengthMm }) => lengthMm)), longestMm };
}

/** Sectors of the planned ribs; two that meet in one window, or leave a sliver between, become one. */
function ribSectors(reaches: Iterable<Reach>, plan: DiscPlan): RingSector[] {
  const least = leastDrawn(plan.spec);
  const width = least.wallMm;
  const byPlace = new Map<string, { one: Reach; start: Degrees; end: Degrees }>();
  for (const reach of reaches) {
    const key = `${reach.track} ${reach.window} ${reach.edge}`;
    const place = byPlace.get(key) ?? { one: reach, start: 0, end: 0 };
    place[reach.end] = Math.max(place[reach.end], reach.spanDeg);
    byPlace.set(key, place);
  }
  return [...byPlace.values()].flatMap(({ one, start, end }) => {
    const { windows, innerRadiusMm, outerRadiusMm } = plan.tracks[one.track]!;
    const { fromDeg, toDeg } = windows[one.window]!;
    const radii =
      one.edge === 'inner'
        ? { innerRadiusMm, outerRadiusMm: innerRadiusMm + width }
        : { innerRadiusMm: outerRadiusMm - width, outerRadiusMm };
    if (start + end + radToDeg(least.windowMm / innerRadiusMm) > toDeg - fromDeg)
      return [{ ...radii, fromDeg, toDeg }];
    const second = wrapDegrees(toDeg - end);
    return [
      ...(start > 0 ? [{ ...radii, fromDeg, toDeg: fromDeg + start }] : []),
      ...(end > 0 ? [{ ...radii, fromDeg: second, toDeg: second + end }] : []),
    ];
  });
}

/**
 * Holds every loose piece of a disc by ribs along the edges of its tracks, where no sensor looks.
 *
 * A rib runs from the piece through the window beside it to the nearest held material; pieces held in one round
 * hold others in the next. Of the ribs that could hold a piece the one that costs least is taken.
 *
 * @param plan - A disc plan without ribs.
 * @param ribCost - What a rib costs; its length, where left out.
 * @returns The plan with its ribs, and the pieces that nothing can hold.
 */
export function holdPieces(plan: DiscPlan, ribCost: RibCost = ribLength): Holding {
  const reaches: Reach[] = [];
  let held = plan;
  for (;;) {
    const grid = materialGrid(held);
    const labels = pieceLabels(grid);
    const pieces = loosePieces(held, grid, labels);
    if (pieces.length === 0) return { plan: held, loose: [] };
    const finder = new RibFinder(grid, labels, leastDrawn(plan.spec));
    const isHeld = (land: Land) => labelOfLand(land, grid, labels) === HELD;
    const round = { plan: held, finder, isHeld, cost: ribCost(held) };
    const answers = pieces.map((piece) => ({ piece, answer: ribsFor(piece, round) }));
    const found = answers.flatMap(({ answer }) => (Array.isArray(answer) ? answer : []));
    if (found.length === 0) {
      const loose = answers.flatMap(({ piece, answer }) =>
        Array.isArray(answer) ? [] : [{ piece, refusal: answer }],
      );
      return { plan: held, loose };
    }
    reaches.push(...found);
    held = { ...plan, ribs: ribSectors(reaches, plan) };
  }
}
