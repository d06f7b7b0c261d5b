import type { Level } from '../../codes/index.ts';
import type { DiscPlan } from '../../disc/index.ts';
import { degToRad, wrapDegrees } from '../../units/index.ts';
import { edgeSpread, type EdgeSpread } from '../light/edgeSpread.ts';
import type { Aperture, Penumbra } from '../headSpec.ts';

/** One track of three levels as a channel sees it: where each mark begins. */
export interface SeenMarks {
  readonly radiusMm: number;
  readonly spread: EdgeSpread;
  /** Where each mark begins. [deg], ascending in [0, 360), n ≥ 0; the mark before it ends there */
  readonly edgesDeg: readonly number[];
  /** Level of the mark that begins at each edge; one value when there is no edge. */
  readonly levels: readonly Level[];
  /** Sideways move of an edge from where it is drawn, as the process makes it. [mm], clockwise positive */
  readonly movesMm: readonly number[];
}

/**
 * The marks of a track of three levels. Marks of the window level grow as windows do; between two others nothing moves.
 *
 * @param disc - Where everything on the disc goes.
 * @param track - Index of the track in the code table. [-]
 */
export function seenMarks(
  disc: DiscPlan,
  track: number,
  aperture: Aperture,
  penumbra: Penumbra | null = null,
): SeenMarks {
  const { startsDeg, levels } = disc.code.tracks[track]!;
  const growth = disc.spec.process.windowGrowthMm / 2;
  const { windowLevel } = disc.spec;
  const edges = startsDeg.length > 1 ? startsDeg : [];
  return {
    radiusMm: disc.tracks[track]!.midRadiusMm,
    spread: edgeSpread(aperture, { radiusMm: disc.tracks[track]!.midRadiusMm, penumbra }),
    edgesDeg: edges,
    levels,
    movesMm: edges.map((_, i) => {
      if (levels[i] === windowLevel) return -growth;
      return levels.at(i - 1) === windowLevel ? growth : 0;
    }),
  };
}

/**
 * Share of a spot on marks of each level.
 *
 * @param angle - Disc angle plus the channel's own angle on the head. [deg]
 * @returns Shares of level 0, 1 and 2, adding up to 1. [-], n = 3
 * @source derived: as the light of windows, each mark being a window of its own level.
 * @check src/core/head/marks/marks.test.ts (the spot laid over the code square by square)
 */
export function markShares(
  { radiusMm, spread, edgesDeg, levels, movesMm }: SeenMarks,
  angle: number,
): number[] {
  const shares = [0, 0, 0];
  const edges = edgesDeg.length;
  if (edges === 0) {
    shares[levels[0]!] = 1;
    return shares;
  }
  /** Share of the spot that lies clockwise of an edge, seen as a straight line through the middle of the disc. */
  const beyond = (i: number, turns: number): number => {
    const ahead = edgesDeg[i]! + turns * 360 - at;
    if (Math.abs(ahead) >= 90) return ahead > 0 ? 0 : 1;
    return spread.transmitted(radiusMm * Math.sin(degToRad(ahead)) + movesMm[i]!);
  };
  const at = wrapDegrees(angle);
  for (let i = 0; i < edges; i++) {
    const next = (i + 1) % edges;
    for (const turns of [-1, 0, 1]) {
      shares[levels[i]!]! += beyond(i, turns) - beyond(next, turns + (next === 0 ? 1 : 0));
    }
  }
  return shares;
}
