import type { HeadPlan } from '../../core/head/index.ts';
import { headingOfDiscAngle, headingOfPosition } from '../../core/instrument/index.ts';
import { headOfShared, liveTurn, type LiveFaults, type LiveTurn } from '../../core/proof/index.ts';
import type { DesignView } from '../engine/designView.ts';
import type { Turn } from './turn.ts';

/** A design under the shaft of the page, with what is wrong with this build. */
export interface LiveModel {
  readonly head: HeadPlan;
  readonly live: LiveTurn;
  /** Heading that is shown; `null` where the word is none of the code's. [deg] */
  readonly headingDeg: number | null;
  /** Where the vane really points. [deg] */
  readonly trueDeg: number;
  /** Shown less true, the short way round; `null` where nothing is shown. [deg] */
  readonly errorDeg: number | null;
  /** Largest error since it was made, either way. [deg] */
  readonly worstDeg: number;
  /** Follows the shaft to where it stands; does nothing twice in one frame. [ms] */
  follow(turn: Turn, elapsedMs: number): void;
}

/** The head of a design, made again from what the engine sent. */
export function headOf(view: DesignView): HeadPlan {
  return headOfShared(view.shared);
}

/** The model of a design, switched on where the shaft stands. */
export function liveModel(view: DesignView, head: HeadPlan, turn: Turn, faults: LiveFaults = {}): LiveModel {
  const { instrument } = view;
  const live = liveTurn(head, faults, turn.angleDeg);
  let lastDeg = turn.totalDeg;
  let frame = -1;
  let worstDeg = 0;
  const model = {
    head,
    live,
    headingDeg: null as number | null,
    trueDeg: 0,
    errorDeg: null as number | null,
    get worstDeg() {
      return worstDeg;
    },
    follow(shaft: Turn, elapsedMs: number): void {
      if (shaft.frame === frame) return;
      frame = shaft.frame;
      live.goOn(shaft.totalDeg - lastDeg, elapsedMs);
      lastDeg = shaft.totalDeg;
      read();
    },
  };
  function read(): void {
    model.trueDeg = headingOfDiscAngle(instrument, live.angleDeg);
    model.headingDeg = live.position === null ? null : headingOfPosition(instrument, live.position);
    model.errorDeg =
      model.headingDeg === null ? null : ((model.headingDeg - model.trueDeg + 540) % 360) - 180;
    if (model.errorDeg !== null) worstDeg = Math.max(worstDeg, Math.abs(model.errorDeg));
  }
  read();
  return model;
}
