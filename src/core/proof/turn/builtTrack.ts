import type { SeenMarks, SeenTrack, Spill } from '../../head/index.ts';
import type { Conditions } from './conditions.ts';
import type { ModelNeighbour, TurnModel } from './turnModel.ts';

const DEG = 180 / Math.PI;

/** A part of a neighbour that lends less light than this is left out of many. [-] */
const PART_UNSEEN = 3e-6;

/** How far an edge stands sideways of where it is drawn: its own move and the pull of the bore's offset. [mm] */
export function movedMm(model: TurnModel, { edgeMm, boreMm }: Conditions, edge: number): number {
  return edgeMm[edge]! + boreMm[1]! * model.edgeCos[edge]! - boreMm[0]! * model.edgeSin[edge]!;
}

/** How far ahead of the head's reference line a channel looks: its own angle, and its misplacement. [deg] of [deg], [mm] */
export function aheadDeg(angleDeg: number, alongMm: number, radiusMm: number): number {
  return angleDeg + (alongMm / radiusMm) * DEG;
}

/** The track of a channel as one build has it, where its sensor really looks, with what neighbours spill into it. */
export function builtTrack(model: TurnModel, conditions: Conditions, c: number): SeenTrack {
  const { seen, firstEdge, neighbours } = model.channels[c]!;
  const movesMm = seen.edgesDeg.map((_, i) => movedMm(model, conditions, firstEdge + i));
  const radiusMm = seen.radiusMm + conditions.acrossMm[c]!;
  const widestMoveMm = movesMm.reduce((widest, move) => Math.max(widest, Math.abs(move)), 0);
  const off = Math.hypot(conditions.boreMm[0]!, conditions.boreMm[1]!);
  const across = conditions.acrossMm[c]!;
  const spill = neighbours
    .filter(({ share }) => Math.max(share(across + off), share(across - off)) > PART_UNSEEN)
    .map((neighbour) => builtSpill(model, conditions, neighbour, c));
  return { ...seen, radiusMm, movesMm, widestMoveMm, spill };
}

/** The marks of a channel of three levels as one build has them. */
export function builtMarks(model: TurnModel, conditions: Conditions, c: number): SeenMarks {
  const { firstEdge, marks } = model.channels[c]!;
  const movesMm = marks!.edgesDeg.map((_, i) => movedMm(model, conditions, firstEdge + i));
  return { ...marks!, radiusMm: marks!.radiusMm + conditions.acrossMm[c]!, movesMm };
}

/** A neighbour of one build: its edges moved, and its ring wandering under the spot as the bore's offset carries it. */
function builtSpill(
  model: TurnModel,
  conditions: Conditions,
  { seen, share, firstEdge }: ModelNeighbour,
  c: number,
): Spill {
  const { boreMm, acrossMm } = conditions;
  const movesMm =
    firstEdge < 0 ? seen.movesMm : seen.movesMm.map((_, i) => movedMm(model, conditions, firstEdge + i));
  const widestMoveMm = movesMm.reduce((widest, move) => Math.max(widest, Math.abs(move)), 0);
  return {
    seen: { ...seen, movesMm, widestMoveMm },
    share: (angleDeg) =>
      share(acrossMm[c]! - boreMm[0]! * Math.cos(angleDeg / DEG) - boreMm[1]! * Math.sin(angleDeg / DEG)),
  };
}
