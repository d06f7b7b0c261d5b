import { wrapDegrees } from '../../units/index.ts';
import { signalOf, SPILL_UNSEEN } from '../../head/index.ts';
import { aheadDeg, builtMarks, builtTrack, movedMm } from './builtTrack.ts';
import type { Conditions } from './conditions.ts';
import { laggedSwitches, type Following } from './laggedSwitches.ts';
import { markSwitches } from './markSwitches.ts';
import { softSwitches, type Sense } from './softMarks.ts';
import { steppedSwitches } from './steppedEdges.ts';
import type { ChannelModel, TurnModel } from './turnModel.ts';

/**
 * Everything that happens to the word in one turn, from the cut clockwise, whichever way the shaft goes.
 *
 * Written over for each turn, never made anew; `order` keeps the last turn's order, near to the next one's.
 */
export interface TurnEvents {
  /** Disc angle of each event. [deg], [cut, cut + 360) */
  readonly angleDeg: Float64Array;
  /** What the key gains where the event is passed clockwise. [-] */
  readonly keyGain: Float64Array;
  /** Events in order of their angle. */
  readonly order: Int32Array;
  count: number;
  /** Events that `order` has been sorted for, -1 before the first turn. */
  sorted: number;
  /** Key of the word at the cut. */
  keyAtCut: number;
  /** Key that is read for each key that the channels give; `null` where it is the same. */
  readsAs: Int32Array | null;
}

/** Room for the events of a model. */
export function roomForEvents(model: TurnModel): TurnEvents {
  // A channel crosses its thresholds at most once an edge, up and down being two edges, or passes through a third mark;
  // edges of neighbours may each switch it there and back.
  const spilled = model.channels.flatMap(({ neighbours }) =>
    neighbours.map(({ seen }) => seen.edgesDeg.length),
  );
  const most = 4 * model.drawnDeg.length + 4 * spilled.reduce((sum, edges) => sum + edges, 0);
  return {
    angleDeg: new Float64Array(most),
    keyGain: new Float64Array(most),
    order: new Int32Array(most),
    count: 0,
    sorted: -1,
    keyAtCut: 0,
    readsAs: null,
  };
}

/**
 * Finds every event of a turn of one build in one sense, in order.
 *
 * @param rateDegPerS - How fast the shaft turns; 0 for so slowly that every sensor follows. [deg/s]
 */
export function findEvents(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
  into: TurnEvents,
  rateDegPerS = 0,
): void {
  into.keyAtCut = model.keyAtCut;
  into.readsAs = conditions.readsAs;
  into.count = 0;
  for (let c = 0; c < model.channels.length; c++) {
    if (model.channels[c]!.marks) addMarks(model, conditions, sense, c, into, rateDegPerS);
    else if (rateDegPerS > 0) addSoftMarks(model, conditions, sense, c, into, rateDegPerS);
    else if (!addLoneEdges(model, conditions, sense, c, into))
      addSoftMarks(model, conditions, sense, c, into);
  }
  sortEvents(into);
}

const DEG = 180 / Math.PI;

/**
 * Adds the events of a channel whose edges each switch by themselves; adds none and says so where two share the spot.
 *
 * The channel switches where the edge lies x ahead of the spot's middle, T(x) being the light of the threshold:
 * r sin(edge − angle) + move = x, the move holding how far the bore's offset carries the edge sideways.
 *
 * @source derived: with no spot and no other error it is angle = edge + asin((e/r) sin(φ − edge)), the pattern standing
 * off the shaft by e towards φ.
 * @check test/published/eccentricity
 */
function addLoneEdges(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
  c: number,
  into: TurnEvents,
): boolean {
  const channel = model.channels[c]!;
  const { seen, firstEdge, firstEvent, keyStep } = channel;
  if (!channel.wholeMarks) return false;
  if (channel.neighbours.length > 0 && isSpilledOn(channel, conditions, c)) return false;
  const rising = conditions.risingLight[c]!;
  const falling = conditions.fallingLight[c]!;
  const beginAt = seen.spread.edgeAt(sense === 'growing' ? rising : falling);
  const endAt = seen.spread.edgeAt(1 - (sense === 'growing' ? falling : rising));
  const radius = seen.radiusMm + conditions.acrossMm[c]!;
  const place = (conditions.alongMm[c]! / radius) * DEG;
  const clearMm = seen.spread.reachMm + Math.max(Math.abs(beginAt), Math.abs(endAt));
  const cutEnd = model.cutDeg + 360;
  const edges = seen.edgesDeg.length;
  const first = into.count;
  let keyAtCut = 0;
  let lastMm =
    edges > 0 ? edgePlaceMm(model, conditions, firstEdge + edges - 1, radius) - 2 * Math.PI * radius : 0;
  for (let i = 0; i < edges; i++) {
    const begins = seen.gains[i]! > 0;
    const move = movedMm(model, conditions, firstEdge + i);
    const sine = (move - (begins ? beginAt : endAt)) / radius;
    const placeMm = (model.edgesDeg[firstEdge + i]! / DEG) * radius + move;
    // Written so that a threshold no light reaches, an infinite x, fails here too.
    if (!(placeMm - lastMm >= clearMm && Math.abs(sine) < 1)) return false;
    lastMm = placeMm;
    const keyGain = begins ? keyStep : -keyStep;
    let angle = model.drawnDeg[firstEvent + i]! + Math.asin(sine) * DEG - place;
    // An event that has crossed the cut has happened there already, or has yet to.
    if (angle < model.cutDeg) {
      angle += 360;
      keyAtCut += keyGain;
    } else if (angle >= cutEnd) {
      angle -= 360;
      keyAtCut -= keyGain;
    }
    into.angleDeg[first + i] = angle;
    into.keyGain[first + i] = keyGain;
  }
  into.count += edges;
  into.keyAtCut += keyAtCut;
  return true;
}

/** How a head's sensors follow a turning shaft. */
function followingOf({ head }: TurnModel, rateDegPerS: number): Following {
  const { detector } = head.spec;
  const { drive } = signalOf(detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  return { rateDegPerS, riseMs: detector.riseMs, fallMs: detector.fallMs, drive };
}

/** True when neighbours' light would move an edge somewhere in the turn. */
function isSpilledOn({ neighbours }: ChannelModel, { acrossMm, boreMm }: Conditions, c: number): boolean {
  const off = Math.hypot(boreMm[0]!, boreMm[1]!);
  const shareAt = (across: number): number => neighbours.reduce((sum, { share }) => sum + share(across), 0);
  return shareAt(acrossMm[c]! + off) >= SPILL_UNSEEN || shareAt(acrossMm[c]! - off) >= SPILL_UNSEEN;
}

function edgePlaceMm(model: TurnModel, conditions: Conditions, edge: number, radius: number): number {
  return (model.edgesDeg[edge]! / DEG) * radius + movedMm(model, conditions, edge);
}

/** Adds the events of a channel with marks narrower than its spot, ribs in it, or a threshold out of reach. */
function addSoftMarks(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
  c: number,
  into: TurnEvents,
  rateDegPerS = 0,
): void {
  const { keyStep, levelAtCut, angleDeg } = model.channels[c]!;
  const built = builtTrack(model, conditions, c);
  const lights = { risingLight: conditions.risingLight[c]!, fallingLight: conditions.fallingLight[c]! };
  const turn =
    rateDegPerS > 0
      ? laggedSwitches(built, lights, sense, followingOf(model, rateDegPerS))
      : (steppedSwitches(built, lights, sense) ?? softSwitches(built, lights, sense));
  const ahead = aheadDeg(angleDeg, conditions.alongMm[c]!, built.radiusMm);
  const events = turn.switches
    .map(({ atDeg, litAfter }) => ({
      at: model.cutDeg + wrapDegrees(atDeg - ahead - model.cutDeg),
      litAfter,
    }))
    .sort((a, b) => a.at - b.at);
  const litNow = events.length > 0 ? !events[0]!.litAfter : turn.litThroughout;
  into.keyAtCut += keyStep * (Number(litNow) - levelAtCut);
  for (const { at, litAfter } of events) {
    into.angleDeg[into.count] = at;
    into.keyGain[into.count] = litAfter ? keyStep : -keyStep;
    into.count += 1;
  }
}

/** Adds the events of a channel that tells three marks apart. */
function addMarks(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
  c: number,
  into: TurnEvents,
  rateDegPerS: number,
): void {
  const { keyStep, levelAtCut, angleDeg } = model.channels[c]!;
  const built = builtMarks(model, conditions, c);
  const { switches, levelThroughout } = markSwitches(built, conditions.readers[c]!, sense);
  // Sensors of three marks follow at once: a slow ramp comes late by their time constant.
  const { riseMs, fallMs } = model.head.spec.detector;
  const late = (sense === 'growing' ? 1 : -1) * rateDegPerS * (Math.max(riseMs, fallMs) / 1000);
  const ahead = aheadDeg(angleDeg, conditions.alongMm[c]!, built.radiusMm) - late;
  const events = switches
    .map((change) => ({ ...change, at: model.cutDeg + wrapDegrees(change.atDeg - ahead - model.cutDeg) }))
    .sort((a, b) => a.at - b.at);
  const levelNow = events.length > 0 ? events[0]!.before : levelThroughout;
  into.keyAtCut += keyStep * (levelNow - levelAtCut);
  for (const { at, before, after } of events) {
    into.angleDeg[into.count] = at;
    into.keyGain[into.count] = keyStep * (after - before);
    into.count += 1;
  }
}

/** Puts events in order; nearly free when the order is that of the turn before but for a few. */
function sortEvents(into: TurnEvents): void {
  const { angleDeg, order, count } = into;
  if (into.sorted !== count) {
    for (let i = 0; i < count; i++) order[i] = i;
    order.subarray(0, count).sort((a, b) => angleDeg[a]! - angleDeg[b]!);
    into.sorted = count;
    return;
  }
  for (let i = 1; i < count; i++) {
    const event = order[i]!;
    const angle = angleDeg[event]!;
    let j = i - 1;
    for (; j >= 0 && angleDeg[order[j]!]! > angle; j--) order[j + 1] = order[j]!;
    order[j + 1] = event;
  }
}
