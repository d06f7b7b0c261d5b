import { addStretch, clearErrors, type TurnErrors } from './turnErrors.ts';
import type { TurnEvents } from './turnEvents.ts';
import type { TurnModel } from './turnModel.ts';

/** Two events closer than this are one event that was rounded. [deg] */
export const SAME_EVENT_DEG = 1e-9;

/** Adds up one turn from its events in order. */
export function walkTurn(model: TurnModel, events: TurnEvents, errors: TurnErrors): void {
  clearErrors(errors);
  const { angleDeg, keyGain, order, count } = events;
  let key = events.keyAtCut;
  let from = model.cutDeg;
  for (let i = 0; i <= count; i++) {
    const event = i < count ? order[i]! : -1;
    const to = event < 0 ? model.cutDeg + 360 : angleDeg[event]!;
    const length = to - from;
    if (length > SAME_EVENT_DEG) {
      const position = model.positionOfKey(key);
      if (position < 0) errors.illegalDeg += length;
      else addStretch(errors, from, length, position, model.centresDeg[position]!, model.stepDeg);
      from = to;
    }
    if (event >= 0) key += keyGain[event]!;
  }
}
