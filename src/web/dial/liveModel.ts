import { lightLevel, seenAsDrawn, type HeadPlan } from '../../core/head/index.ts';
import { headingOfPosition, type Instrument } from '../../core/instrument/index.ts';
import { exactTurn, headOfShared, type BuildFaults, type ReadStretch } from '../../core/proof/index.ts';
import { wrapDegrees } from '../../core/units/index.ts';
import type { DesignView } from '../engine/designView.ts';

/** What the turning disc shows at an angle. */
export interface LiveModel {
  readonly head: HeadPlan;
  /** Light on a channel. [-], 0..1 */
  lightAt(channel: number, angleDeg: number): number;
  /** The word that the channels show, and what it is read as. */
  readAt(angleDeg: number, sense: 'growing' | 'falling'): ReadStretch;
  /** Heading of a position; `null` where the word is none of the code's. [deg] */
  headingOf(position: number | null): number | null;
}

/** The stretch of a turn in which an angle lies. */
function stretchAt(stretches: readonly ReadStretch[], angleDeg: number): ReadStretch {
  const at = wrapDegrees(angleDeg);
  const found = stretches.find(({ fromDeg, toDeg }) => (at >= fromDeg && at < toDeg) || at + 360 < toDeg);
  return found ?? stretches[0]!;
}

/** The model of a design, with what is wrong with this build. */
export function liveModel(view: DesignView, faults: BuildFaults = {}): LiveModel {
  const head = headOfShared(view.shared);
  const turn = exactTurn(head, faults);
  const seen = head.channels.map(({ track }) => seenAsDrawn(head.disc, track, head.spec));
  const { instrument } = view;
  return {
    head,
    lightAt: (channel, angleDeg) => lightLevel(seen[channel]!, angleDeg + head.channels[channel]!.angleDeg),
    readAt: (angleDeg, sense) => stretchAt(turn[sense], angleDeg),
    headingOf: (position) => headingOf(instrument, position),
  };
}

function headingOf(instrument: Instrument, position: number | null): number | null {
  return position === null ? null : headingOfPosition(instrument, position);
}
