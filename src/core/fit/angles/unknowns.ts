import type { CodeWalk } from '../wiring/codeWalk.ts';
import { degToRad, radToDeg, type Degrees } from '../../units/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { SparseRow } from './cholesky.ts';

/** Where the unknowns stand in the list of them. */
export interface Unknowns {
  /** Bore: towards the index mark, and a quarter turn clockwise of it. [mm] */
  readonly boreX: number;
  readonly boreY: number;
  /** Twice a turn: share of cos 2a and of sin 2a, a the angle on the pattern. [deg] */
  readonly twiceCos: number;
  readonly twiceSin: number;
  /** Play: what the vane turns on before the disc follows. [deg] */
  readonly play: number;
  /** What must be added to a noted mark to get the disc angle. [deg] */
  readonly markOffset: number;
  /** Growth of all windows beyond the drawing's. [mm] */
  readonly growthOfAll: number;
  /** First of the channels' places along their tracks, and of what the growth of their windows is beyond that of all. [mm] */
  readonly along: number;
  readonly growth: number;
  /** First of the edges' own places, where each edge has one; -1 where they are taken together. [deg] */
  readonly edges: number;
  readonly size: number;
}

/** Unknowns of a walk with so many channels and edges. */
export function unknownsOf(channels: number, edges: number): Unknowns {
  const along = 7;
  const growth = along + channels;
  const firstEdge = growth + channels;
  return {
    boreX: 0,
    boreY: 1,
    twiceCos: 2,
    twiceSin: 3,
    play: 4,
    markOffset: 5,
    growthOfAll: 6,
    along,
    growth,
    edges: edges > 0 ? firstEdge : -1,
    size: firstEdge + edges,
  };
}

/** One edge of the disc as one channel sees it. */
export interface DiscEdge {
  readonly boundary: number;
  readonly channel: number;
  /** Disc angle at which the drawing has it pass the middle between the levels. [deg], near its boundary */
  readonly drawnDeg: Degrees;
  /** A window begins clockwise of it. */
  readonly begins: boolean;
  readonly radiusMm: number;
  /** How the unknowns, its own place left out, move it. */
  readonly row: SparseRow;
}

/**
 * Every edge of a code with what moves it.
 *
 * @param drawn - Offset of each edge from its boundary as drawn. [deg] of a boundary and a channel
 * @source derived: an edge at pattern angle a, radius r, moves by (y cos a − x sin a)/r for a pattern off the shaft by
 * (x, y), by −t/r for a channel t along its track; see src/core/proof/turn/turnEvents.ts.
 */
export function discEdges(
  walk: CodeWalk,
  head: HeadPlan,
  u: Unknowns,
  drawn: (boundary: number, channel: number) => number,
): DiscEdge[] {
  const windowLevel = head.disc.spec.windowLevel;
  return walk.boundaries.flatMap(({ angleDeg, changing, risesTo }, boundary) =>
    head.channels.flatMap(({ radiusMm, angleDeg: stands }, channel): DiscEdge[] => {
      if (((changing >>> channel) & 1) === 0) return [];
      const drawnDeg = angleDeg + drawn(boundary, channel);
      const at = degToRad(drawnDeg + stands);
      const perMm = radToDeg(1) / radiusMm;
      const begins = ((risesTo >>> channel) & 1) === windowLevel;
      const row: SparseRow = [
        [u.boreX, -Math.sin(at) * perMm],
        [u.boreY, Math.cos(at) * perMm],
        [u.twiceCos, Math.cos(2 * at)],
        [u.twiceSin, Math.sin(2 * at)],
        [u.along + channel, -perMm],
        [u.growthOfAll, ((begins ? -1 : 1) * perMm) / 2],
        [u.growth + channel, ((begins ? -1 : 1) * perMm) / 2],
      ];
      return [{ boundary, channel, drawnDeg, begins, radiusMm, row }];
    }),
  );
}
