import { wrapDegrees } from '../../units/index.ts';
import type { Sense } from './softMarks.ts';
import type { TurnEvents } from './turnEvents.ts';
import type { TurnModel } from './turnModel.ts';

/** Two events closer than this are one event that was rounded. [deg] */
export const SAME_EVENT_DEG = 1e-9;

/** A stretch of the turn over which one word shows. */
export interface ShownStretch {
  readonly fromDeg: number;
  readonly lengthDeg: number;
  readonly key: number;
  /** Position that a reader shows, -1 where it shows none. */
  readonly position: number;
}

/**
 * Stretches of a turn clockwise from the cut, with the position that a reader shows over each.
 *
 * A reader that remembers is turned round once before, so that nothing is left of how it began.
 */
export function shownStretches(model: TurnModel, events: TurnEvents, sense: Sense): ShownStretch[] {
  const words = wordStretches(model, events);
  if (!model.remembers) return words.map((word) => ({ ...word, position: model.positionOfKey(word.key) }));
  const shown = new Array<number>(words.length).fill(-1);
  const { code } = model.head.disc;
  let last = startingPosition(model, words, sense);
  for (let step = 0; step < 2 * words.length; step++) {
    const i = sense === 'growing' ? step % words.length : words.length - 1 - (step % words.length);
    const position = code.nextPosition(model.wordOfKey(words[i]!.key), last);
    shown[i] = position ?? -1;
    last = position ?? last;
  }
  return words.map((word, i) => ({ ...word, position: shown[i]! }));
}

/** A wheel that only counts is set by hand to where it stands; any other reader finds out by itself. */
function startingPosition(model: TurnModel, words: readonly WordStretch[], sense: Sense): number | null {
  if (model.head.disc.code.absolute) return null;
  const first = words.at(sense === 'growing' ? 0 : -1)!;
  return (
    Math.floor(wrapDegrees(first.fromDeg + first.lengthDeg / 2) / model.stepDeg) % model.centresDeg.length
  );
}

type WordStretch = Omit<ShownStretch, 'position'>;

function wordStretches(
  model: TurnModel,
  { angleDeg, keyGain, order, count, keyAtCut, readsAs }: TurnEvents,
): WordStretch[] {
  const stretches: WordStretch[] = [];
  let key = keyAtCut;
  let from = model.cutDeg;
  for (let i = 0; i <= count; i++) {
    const to = i < count ? angleDeg[order[i]!]! : model.cutDeg + 360;
    if (to - from > SAME_EVENT_DEG) {
      stretches.push({ fromDeg: from, lengthDeg: to - from, key: readsAs === null ? key : readsAs[key]! });
      from = to;
    }
    if (i < count) key += keyGain[order[i]!]!;
  }
  return stretches;
}
