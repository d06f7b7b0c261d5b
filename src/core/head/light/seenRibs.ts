import type { DiscPlan } from '../../disc/index.ts';
import { spreadAcross } from './edgeSpread.ts';
import type { Aperture } from '../headSpec.ts';

/** A rib that covers less of the spot than this moves no edge by a thousandth of the spot: it is not seen. [-] */
const RIB_UNSEEN = 1e-3;

/** A stretch of a track with a share of the spot: of what a rib covers, or of what a window leaves open. [deg, -] */
export interface OpenArc {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly share: number;
}

/** Ribs that cross a channel's spot, with the share of it that each covers; a rib belongs to the tracks it lies on. */
export function seenRibs(disc: DiscPlan, track: number, aperture: Aperture): OpenArc[] {
  const { midRadiusMm, innerRadiusMm, outerRadiusMm } = disc.tracks[track]!;
  const across = spreadAcross(aperture);
  return disc.ribs.flatMap((rib) => {
    if (rib.outerRadiusMm <= innerRadiusMm || rib.innerRadiusMm >= outerRadiusMm) return [];
    const share =
      across.transmitted(rib.innerRadiusMm - midRadiusMm) -
      across.transmitted(rib.outerRadiusMm - midRadiusMm);
    return share < RIB_UNSEEN ? [] : [{ fromDeg: rib.fromDeg, toDeg: rib.toDeg, share }];
  });
}

/** A window cut where ribs begin and end in it, each part with the share of the spot that stays open. */
export function openArcs(window: { fromDeg: number; toDeg: number }, ribs: readonly OpenArc[]): OpenArc[] {
  const { fromDeg, toDeg } = window;
  // A rib may be written a whole turn away from its window.
  const inside = ribs.flatMap((rib) =>
    [-360, 0, 360]
      .map((turn) => ({ ...rib, fromDeg: rib.fromDeg + turn, toDeg: rib.toDeg + turn }))
      .filter((placed) => placed.fromDeg < toDeg && placed.toDeg > fromDeg),
  );
  const cuts = [fromDeg, toDeg, ...inside.flatMap((rib) => [rib.fromDeg, rib.toDeg])]
    .filter((cut) => cut >= fromDeg && cut <= toDeg)
    .sort((a, b) => a - b);
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i]!;
    const middle = (from + to) / 2;
    const covered = inside.filter((rib) => rib.fromDeg < middle && rib.toDeg > middle);
    return {
      fromDeg: from,
      toDeg: to,
      share: Math.max(0, 1 - covered.reduce((sum, rib) => sum + rib.share, 0)),
    };
  });
}
