import type { MarkReader } from '../../head/index.ts';
import type { TurnModel } from './turnModel.ts';

/** Everything about one build that may differ from the drawing. Written over for each build, never made anew. */
export interface Conditions {
  /** Sideways move of each edge, its drawn move included, clockwise positive. [mm]; n = edges of the model */
  readonly edgeMm: Float64Array;
  /** Centre of the pattern from the shaft: along the index mark, and a quarter turn clockwise of it. [mm]; n = 2 */
  readonly boreMm: Float64Array;
  /** Each channel's place along its track, clockwise positive, and outwards across it. [mm]; n = channels */
  readonly alongMm: Float64Array;
  readonly acrossMm: Float64Array;
  /** Light at which each channel is called lit, and dark. [-]; n = channels */
  readonly risingLight: Float64Array;
  readonly fallingLight: Float64Array;
  /** How each channel tells three marks apart; `null` where it tells light from dark. n = channels */
  readonly readers: (MarkReader | null)[];
}

/** The design exactly as drawn. */
export function drawnConditions(model: TurnModel): Conditions {
  const { levels } = model.head;
  const channels = model.channels.length;
  return {
    edgeMm: Float64Array.from(model.movesMm),
    boreMm: new Float64Array(2),
    alongMm: new Float64Array(channels),
    acrossMm: new Float64Array(channels),
    risingLight: new Float64Array(channels).fill(levels.risingLight),
    fallingLight: new Float64Array(channels).fill(levels.fallingLight),
    readers: model.channels.map(({ marks }) => (marks ? model.reader : null)),
  };
}

/** What is wrong with one build; whatever is left out is as drawn. */
export interface BuildFaults {
  /** How far an edge stands off its place beyond the process's own growth, clockwise positive. [mm] of a track and the edge's drawn angle [deg] */
  readonly edgeMm?: (track: number, edgeDeg: number) => number;
  /** Centre of the pattern from the shaft: along the index mark, and a quarter turn clockwise of it. [mm] */
  readonly boreMm?: readonly [number, number];
  /** Place of each channel along its track, clockwise positive, and outwards across it. [mm]; n = channels */
  readonly alongMm?: readonly number[];
  readonly acrossMm?: readonly number[];
}

/** The conditions of a build with stated faults. */
export function faultyConditions(model: TurnModel, faults: BuildFaults): Conditions {
  const conditions = drawnConditions(model);
  conditions.boreMm.set(faults.boreMm ?? []);
  conditions.alongMm.set(faults.alongMm ?? []);
  conditions.acrossMm.set(faults.acrossMm ?? []);
  if (faults.edgeMm) {
    // Channels that share a track share its edges: each is moved from where it is drawn, however often it is met.
    for (const [c, { seen, firstEdge }] of model.channels.entries()) {
      const { track } = model.head.channels[c]!;
      for (const [i, edge] of seen.edgesDeg.entries()) {
        conditions.edgeMm[firstEdge + i] = seen.movesMm[i]! + faults.edgeMm(track, edge);
      }
    }
  }
  return conditions;
}
