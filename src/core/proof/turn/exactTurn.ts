import type { HeadPlan } from '../../head/index.ts';
import { wrapDegrees } from '../../units/index.ts';
import type { ExactTurn, ReadingErrors, ReadStretch } from '../proof.ts';
import { daylightOf } from './daylight.ts';
import { faultyConditions, type BuildFaults, type Conditions } from './conditions.ts';
import { shownStretches, type ShownStretch } from './shownStretches.ts';
import type { Sense } from './softMarks.ts';
import { roomForErrors, type TurnErrors } from './turnErrors.ts';
import { findEvents, roomForEvents } from './turnEvents.ts';
import { turnModel, type TurnModel } from './turnModel.ts';
import { walkTurn } from './walkTurn.ts';

/**
 * The design as drawn, or with stated faults, turned once each way: where each word begins and ends.
 *
 * Every change of a channel is a closed form of its edge, or a bracketed root where marks share the spot.
 *
 * @param head - The design.
 * @param faults - What is wrong with this build; nothing, unless stated. [mm]
 * @param rateDegPerS - How fast it turns; so slowly that every sensor follows, unless stated. [deg/s]
 * @throws `proof/too-many-channels`
 * @check src/core/proof/turn/denseTurn.test.ts (a dense scan of the light)
 */
export function exactTurn(head: HeadPlan, faults: BuildFaults = {}, rateDegPerS = 0): ExactTurn {
  const model = turnModel(head);
  const conditions = faultyConditions(model, faults);
  const growing = turned(model, conditions, 'growing', rateDegPerS);
  const falling = turned(model, conditions, 'falling', rateDegPerS);
  return {
    growing: growing.stretches,
    falling: falling.stretches,
    errors: worseOf(growing.errors, falling.errors),
  };
}

/**
 * What the design as drawn reads wrong at night, its thresholds set at noon; `null` where daylight changes nothing.
 *
 * @throws `proof/too-many-channels`
 * @check src/core/proof/turn/daylight.test.ts
 */
export function nightErrors(head: HeadPlan): ReadingErrors | null {
  const daylight = daylightOf(head);
  return daylight > 0 ? exactTurn(head, { addedLight: -daylight }).errors : null;
}

function turned(
  model: TurnModel,
  conditions: Conditions,
  sense: Sense,
  rateDegPerS: number,
): { stretches: ReadStretch[]; errors: ReadingErrors } {
  const events = roomForEvents(model);
  const errors = roomForErrors(model.centresDeg.length);
  findEvents(model, conditions, sense, events, rateDegPerS);
  walkTurn(model, events, sense, errors);
  return {
    stretches: joinedAtCut(model, shownStretches(model, events, sense)),
    errors: readingErrors(errors),
  };
}

/** The stretch that the cut went through is one. */
function joinedAtCut(model: TurnModel, shown: readonly ShownStretch[]): ReadStretch[] {
  const first = shown[0]!;
  const last = shown.at(-1)!;
  const isOne = shown.length > 1 && first.key === last.key && first.position === last.position;
  const whole = isOne
    ? [...shown.slice(1, -1), { ...last, lengthDeg: last.lengthDeg + first.lengthDeg }]
    : shown;
  return whole.map(({ fromDeg, lengthDeg, key, position }) => {
    const from = wrapDegrees(fromDeg);
    return {
      fromDeg: from,
      toDeg: from + lengthDeg,
      word: model.wordOfKey(key),
      position: position < 0 ? null : position,
    };
  });
}

function readingErrors(errors: TurnErrors): ReadingErrors {
  const unseenPositions: number[] = [];
  for (const [position, turn] of errors.lastShown.entries()) {
    if (turn !== errors.turn) unseenPositions.push(position);
  }
  return {
    rmsDeg: errors.shownDeg > 0 ? Math.sqrt(errors.squareSum / errors.shownDeg) : null,
    maxDeg: errors.shownDeg > 0 ? errors.maxDeg : null,
    misreadShare: errors.misreadDeg / 360,
    illegalShare: errors.illegalDeg / 360,
    unseenPositions,
  };
}

/** The worse of the two ways in every figure. */
function worseOf(a: ReadingErrors, b: ReadingErrors): ReadingErrors {
  return {
    rmsDeg: worse(a.rmsDeg, b.rmsDeg),
    maxDeg: worse(a.maxDeg, b.maxDeg),
    misreadShare: Math.max(a.misreadShare, b.misreadShare),
    illegalShare: Math.max(a.illegalShare, b.illegalShare),
    unseenPositions: [...new Set([...a.unseenPositions, ...b.unseenPositions])].sort((p, q) => p - q),
  };
}

/** The larger of two errors; a way round that shows no position at all has none. [deg] */
function worse(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}
