import type { HeadPlan } from '../../head/index.ts';
import { wrapDegrees } from '../../units/index.ts';
import type { ExactTurn, ReadingErrors, ReadStretch } from '../proof.ts';
import { faultyConditions, type BuildFaults, type Conditions } from './conditions.ts';
import type { Sense } from './softMarks.ts';
import { roomForErrors, type TurnErrors } from './turnErrors.ts';
import { findEvents, roomForEvents, type TurnEvents } from './turnEvents.ts';
import { turnModel, type TurnModel } from './turnModel.ts';
import { SAME_EVENT_DEG, walkTurn } from './walkTurn.ts';

/**
 * The design as drawn, or with stated faults, turned slowly once each way: where each word begins and ends.
 *
 * Every change of a channel is a closed form of its edge, or a bracketed root where marks share the spot.
 *
 * @param head - The design.
 * @param faults - What is wrong with this build; nothing, unless stated. [mm]
 * @throws `proof/too-many-channels`
 * @check src/core/proof/turn/denseTurn.test.ts (a dense scan of the light)
 */
export function exactTurn(head: HeadPlan, faults: BuildFaults = {}): ExactTurn {
  const model = turnModel(head);
  const conditions = faultyConditions(model, faults);
  const growing = turned(model, conditions, 'growing');
  const falling = turned(model, conditions, 'falling');
  return {
    growing: growing.stretches,
    falling: falling.stretches,
    errors: worseOf(growing.errors, falling.errors),
  };
}

function turned(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
): { stretches: ReadStretch[]; errors: ReadingErrors } {
  const events = roomForEvents(model);
  const errors = roomForErrors(model.centresDeg.length);
  findEvents(model, conditions, sense, events);
  walkTurn(model, events, errors);
  return { stretches: stretchesOf(model, events), errors: readingErrors(errors) };
}

/** Stretches clockwise from the first event after the cut; one without bounds of its own when nothing ever changes. */
function stretchesOf(
  model: TurnModel,
  { angleDeg, keyGain, order, count, keyAtCut }: TurnEvents,
): ReadStretch[] {
  const bounds: { at: number; key: number }[] = [];
  let key = keyAtCut;
  for (let i = 0; i < count; i++) {
    const event = order[i]!;
    key += keyGain[event]!;
    const last = bounds.at(-1);
    if (last && angleDeg[event]! - last.at <= SAME_EVENT_DEG) last.key = key;
    else bounds.push({ at: angleDeg[event]!, key });
  }
  if (bounds.length === 0) return [stretch(model, model.cutDeg, model.cutDeg + 360, keyAtCut)];
  const first = bounds[0]!.at + 360;
  return bounds.map((bound, i) => stretch(model, bound.at, bounds[i + 1]?.at ?? first, bound.key));
}

function stretch(model: TurnModel, from: number, to: number, key: number): ReadStretch {
  const fromDeg = wrapDegrees(from);
  const position = model.positionOfKey(key);
  return {
    fromDeg,
    toDeg: fromDeg + (to - from),
    word: model.wordOfKey(key),
    position: position < 0 ? null : position,
  };
}

function readingErrors(errors: TurnErrors): ReadingErrors {
  const unseenPositions: number[] = [];
  for (const [position, turn] of errors.lastShown.entries()) {
    if (turn !== errors.turn) unseenPositions.push(position);
  }
  return {
    rmsDeg: errors.shownDeg > 0 ? Math.sqrt(errors.squareSum / errors.shownDeg) : 0,
    maxDeg: errors.maxDeg,
    misreadShare: errors.misreadDeg / 360,
    illegalShare: errors.illegalDeg / 360,
    unseenPositions,
  };
}

/** The worse of the two ways in every figure. */
function worseOf(a: ReadingErrors, b: ReadingErrors): ReadingErrors {
  return {
    rmsDeg: Math.max(a.rmsDeg, b.rmsDeg),
    maxDeg: Math.max(a.maxDeg, b.maxDeg),
    misreadShare: Math.max(a.misreadShare, b.misreadShare),
    illegalShare: Math.max(a.illegalShare, b.illegalShare),
    unseenPositions: [...new Set([...a.unseenPositions, ...b.unseenPositions])].sort((p, q) => p - q),
  };
}
