import {
  hasGates,
  hysteresisCounts,
  ladderReadsAs,
  markReaderOf,
  signalOf,
  switchLights,
  thresholdsBetween,
  type HeadPlan,
  type MarkReader,
  type MarkVariation,
  type Signal,
  type Thresholds,
} from '../../head/index.ts';
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
  /** Key that one wire reads for each key that the channels give; `null` where nothing is misread. */
  readsAs: Int32Array | null;
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
    readsAs: null,
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
  /** Tilt of the disc on its shaft about the index mark's line, and about the line a quarter turn from it. [deg] */
  readonly tiltDeg?: readonly [number, number];
  /** Shaft from the middle of its bearing: along the head's reference line, and a quarter turn clockwise of it. [mm] */
  readonly shaftMm?: readonly [number, number];
  /** How far clockwise of north the head was set. [deg] */
  readonly northDeg?: number;
  /** Factors on each channel's sensor and resistor, thresholds being measured with them. [-]; n = channels */
  readonly parts?: readonly number[];
  readonly resistors?: readonly number[];
  /** Factors on each resistor of the one wire, in the order of `LadderPlan.resistors`. [-] */
  readonly ladder?: readonly number[];
  /** What each channel that tells three marks apart differs in. n = channels */
  readonly marks?: readonly MarkVariation[];
  /** How far off both thresholds of each channel are. [counts]; n = channels */
  readonly thresholdCounts?: readonly number[];
  /** Factor by which every sensor has changed since thresholds were measured. [-] */
  readonly drift?: number;
  /** Light that has come since thresholds were measured, as a share of full light; below 0 where daylight has gone. [-] */
  readonly addedLight?: number;
  /** Factor on the light of each channel's lamp since thresholds were measured, above 0. [-]; n = channels */
  readonly lamps?: readonly number[];
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
  if (faults.tiltDeg) addTilt(model, faults.tiltDeg, conditions);
  addToChannels(model, faults.shaftMm ?? [0, 0], faults.northDeg ?? 0, conditions);
  setSwitchLights(model, faults, conditions);
  if (faults.marks) setReaders(model, faults.marks, conditions);
  const { ladder, board } = model.head;
  if (ladder && faults.ladder) conditions.readsAs = ladderReadsAs(ladder, board, faults.ladder);
  return conditions;
}

const DEG = 180 / Math.PI;

/**
 * Moves the edges of a tilted disc: seen along the shaft a circle is an ellipse, narrow by cos τ across the tilt's axis.
 *
 * @param tiltDeg - Tilt about the index mark's line, and about the line a quarter turn from it. [deg]
 * @source derived: an angle φ from the axis shows as atan(cos τ tan φ), twice a turn, at most about τ²/4.
 * @check src/core/proof/budget/errorBudget.test.ts
 */
export function addTilt(model: TurnModel, tiltDeg: readonly [number, number], { edgeMm }: Conditions): void {
  const tilt = Math.hypot(tiltDeg[0], tiltDeg[1]) / DEG;
  if (tilt === 0) return;
  const axis = Math.atan2(tiltDeg[1], tiltDeg[0]);
  const narrow = Math.cos(tilt);
  for (let i = 0; i < model.edgesDeg.length; i++) {
    const from = model.edgesDeg[i]! / DEG - axis;
    const shown = Math.atan2(narrow * Math.sin(from), Math.cos(from));
    edgeMm[i]! += model.edgeRadiusMm[i]! * Math.sin(shown - from);
  }
}

/** A shaft off the middle of its bearing and a head off north move every channel, each as it stands. */
export function addToChannels(
  model: TurnModel,
  [x, y]: readonly [number, number],
  northDeg: number,
  { alongMm, acrossMm }: Conditions,
): void {
  if (x === 0 && y === 0 && northDeg === 0) return;
  for (const [c, { angleDeg, seen }] of model.channels.entries()) {
    const at = angleDeg / DEG;
    // The head as seen from the shaft: moved the other way.
    alongMm[c]! += x * Math.sin(at) - y * Math.cos(at) + (northDeg / DEG) * seen.radiusMm;
    acrossMm[c]! -= x * Math.cos(at) + y * Math.sin(at);
  }
}

function setReaders(model: TurnModel, variations: readonly MarkVariation[], { readers }: Conditions): void {
  const { spec, circuit, board, levels, marks } = model.head;
  const parts = { detector: spec.detector, circuit, board, resistorOhm: levels.resistorOhm, plan: marks! };
  for (const [c, variation] of variations.entries()) {
    if (readers[c] !== null) readers[c] = markReaderOf(parts, variation);
  }
}

function setSwitchLights(model: TurnModel, faults: BuildFaults, conditions: Conditions): void {
  const { parts = [], resistors = [], thresholdCounts = [], lamps = [], drift = 1, addedLight = 0 } = faults;
  const { head } = model;
  if (head.marks !== null) return;
  const signal = signalOf(head.spec.detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  for (let c = 0; c < model.channels.length; c++) {
    const [part, resistor, off] = [parts[c] ?? 1, resistors[c] ?? 1, thresholdCounts[c] ?? 0];
    const lamp = lamps[c] ?? 1;
    const asMeasured = drift === 1 && addedLight === 0 && lamp === 1;
    if (part === 1 && resistor === 1 && off === 0 && asMeasured) continue;
    const { lowCounts, highCounts } = ownThresholds(head, signal, part, resistor);
    const moved = { lowCounts: lowCounts + off, highCounts: highCounts + off };
    const lights = switchLights(moved, signal, part * drift, resistor);
    conditions.risingLight[c] = (lights.risingLight - addedLight) / lamp;
    conditions.fallingLight[c] = (lights.fallingLight - addedLight) / lamp;
  }
}

/**
 * Thresholds of a channel with its own parts: halfway between what it really reads, or as drawn where they are shared
 * or a gate's.
 *
 * @param part - Factor on the sensor. [-] @param resistor - Factor on the resistor. [-]
 */
export function ownThresholds(head: HeadPlan, signal: Signal, part: number, resistor: number): Thresholds {
  const { levels, circuit } = head;
  if (circuit.thresholds === 'shared' || hasGates(circuit)) return levels;
  const hysteresis = hysteresisCounts(circuit, signal.scaleCounts);
  return thresholdsBetween(signal.counts(1, part, resistor), signal.counts(0, part, resistor), hysteresis);
}
