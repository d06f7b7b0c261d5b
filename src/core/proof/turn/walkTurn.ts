import { SAME_EVENT_DEG, shownStretches } from './shownStretches.ts';
import type { Sense } from './softMarks.ts';
import { addStretch, clearErrors, type TurnErrors } from './turnErrors.ts';
import type { TurnEvents } from './turnEvents.ts';
import type { TurnModel } from './turnModel.ts';

/** Adds up one turn from its events in order. */
export function walkTurn(model: TurnModel, events: TurnEvents, sense: Sense, errors: TurnErrors): void {
  clearErrors(errors);
  if (model.remembers) {
    for (const { fromDeg, lengthDeg, position } of shownStretches(model, events, sense)) {
      add(model, errors, fromDeg, lengthDeg, position);
    }
    return;
  }
  // The same stretches without making them: nearly all of the time of virtual builds is spent here and in the events.
  const { angleDeg, keyGain, order, count, readsAs } = events;
  let key = events.keyAtCut;
  let from = model.cutDeg;
  for (let i = 0; i <= count; i++) {
    const event = i < count ? order[i]! : -1;
    const to = event < 0 ? model.cutDeg + 360 : angleDeg[event]!;
    if (to - from > SAME_EVENT_DEG) {
      add(model, errors, from, to - from, model.positionOfKey(readsAs === null ? key : readsAs[key]!));
      from = to;
    }
    if (event >= 0) key += keyGain[event]!;
  }
}

function add(
  model: TurnModel,
  errors: TurnErrors,
  fromDeg: number,
  lengthDeg: number,
  position: number,
): void {
  if (position < 0) errors.illegalDeg += lengthDeg;
  else addStretch(errors, fromDeg, lengthDeg, position, model.centresDeg[position]!, model.stepDeg);
}
