import type { Board } from '../../boards/index.ts';
import type { DiscPlan } from '../../disc/index.ts';
import { radToDeg, turnBetween } from '../../units/index.ts';
import type { ChannelPlan, Levels, Rate, SpeedLimit } from '../headPlan.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import { loopMs } from './readLoop.ts';
import { seenTrack, type SeenTrack } from '../light/seenTrack.ts';
import { markReaderOf, type MarkPlan } from '../marks/markPlan.ts';
import { seenMarks } from '../marks/seenMarks.ts';
import type { SwitchLights } from './thresholds.ts';

/** Standard deviations of edge and channel places by which a step may be narrower than drawn. Common practice, no source. */
const PLACE_SIGMA = 2;

/**
 * Fastest turn at which a step still stays in view for one lag and one read.
 *
 * @param step - Width of the step, how far each of its two edges may stand inside it, lag and loop.
 * @returns 0 when the edges leave nothing of the step. [deg/s]
 * @source derived: ω = (step − 2 edge)/(lag + loop).
 * @check test/published/divider (32 positions, 30 ms: 375 deg/s)
 */
export function speedLimitDegPerS(step: {
  stepDeg: number;
  edgeDeg: number;
  lagMs: number;
  loopMs: number;
}): number {
  const clear = step.stepDeg - 2 * step.edgeDeg;
  return Math.max(0, clear) / ((step.lagMs + step.loopMs) / 1000);
}

/** The speed limit of a head, from its narrowest step, its lag and its loop. */
export function headSpeedLimit(
  disc: DiscPlan,
  spec: HeadSpec,
  head: {
    readonly channels: readonly ChannelPlan[];
    readonly levels: Levels;
    readonly marks: MarkPlan | null;
    readonly circuit: CircuitSpec;
    readonly board: Board;
    readonly rate: Rate;
  },
): SpeedLimit {
  const { channels, levels, marks, circuit, board, rate } = head;
  const innermost = Math.min(...channels.map((channel) => channel.radiusMm));
  const placeSd = Math.hypot(disc.spec.process.edgeSdMm, spec.tangentialSdMm);
  // Three marks are read by sensors that follow at once: a slow ramp comes late by their time constant.
  const lag = marks
    ? Math.max(spec.detector.riseMs, spec.detector.fallMs)
    : Math.max(levels.riseLagMs, levels.fallLagMs);
  const loop = loopMs({
    channels: channels.length,
    circuit,
    detector: spec.detector,
    sourceOhm: levels.sourceOhm,
    board,
    lineChars: rate.lineChars,
  });
  const limitDegPerS = speedLimitDegPerS({
    stepDeg: marks
      ? narrowestOfMarks(disc, spec, channels, {
          ...{ detector: spec.detector, circuit, board, resistorOhm: levels.resistorOhm },
          plan: marks,
        })
      : narrowestStepDeg(disc, spec, channels, levels),
    edgeDeg: radToDeg((PLACE_SIGMA * placeSd) / innermost),
    lagMs: lag,
    loopMs: loop,
  });
  return { loopMs: loop, lagMs: lag, limitDegPerS };
}

/**
 * Width of the narrowest step as the channels show it, the narrower of both ways round; below 0 when edges cross. [deg]
 *
 * Thresholds away from half light and hysteresis move every edge, so neighbouring steps differ in width.
 */
export function narrowestStepDeg(
  disc: DiscPlan,
  spec: HeadSpec,
  channels: readonly ChannelPlan[],
  levels: SwitchLights,
): number {
  const seen = new Map(
    channels.map(({ track }) => [
      track,
      seenTrack({ ...disc, ribs: [] }, track, spec.aperture, spec.penumbra ?? null),
    ]),
  );
  return narrowestOf(disc.code.positions, channels, (track, sense) => {
    const own = seen.get(track)!;
    return own.edgesDeg.map((edge, i) => ({ edge, move: edgeMoveDeg(own, i, sense, levels) }));
  });
}

/** The same for marks of three levels, each edge where the mark behind it is read at last. [deg] */
function narrowestOfMarks(
  disc: DiscPlan,
  spec: HeadSpec,
  channels: readonly ChannelPlan[],
  head: Parameters<typeof markReaderOf>[0],
): number {
  const reader = markReaderOf(head);
  return narrowestOf(disc.code.positions, channels, (track, sense) => {
    const { edgesDeg, levels, movesMm, radiusMm, spread } = seenMarks(
      disc,
      track,
      spec.aperture,
      spec.penumbra,
    );
    return edgesDeg.map((edge, i) => {
      const [before, after] = [levels.at(i - 1)!, levels[i]!];
      const [from, to] = sense === 'growing' ? [before, after] : [after, before];
      const share = reader.changes(from, to).at(-1)?.share ?? 1;
      const x = spread.edgeAt(sense === 'growing' ? share : 1 - share);
      return { edge, move: radToDeg(Math.asin(Math.max(-1, Math.min(1, (movesMm[i]! - x) / radiusMm)))) };
    });
  });
}

type MovedEdges = readonly { readonly edge: number; readonly move: number }[];

function narrowestOf(
  positions: number,
  channels: readonly ChannelPlan[],
  edgesOf: (track: number, sense: 'growing' | 'falling') => MovedEdges,
): number {
  const stepDeg = 360 / positions;
  let narrowest = stepDeg;
  for (const sense of ['growing', 'falling'] as const) {
    // Where the last channel has changed after each boundary, and where the first begins to, from the boundary. [deg]
    const latest = new Array<number>(positions).fill(-Infinity);
    const earliest = new Array<number>(positions).fill(Infinity);
    for (const channel of channels) {
      for (const { edge, move } of edgesOf(channel.track, sense)) {
        const boundary = Math.round((edge - channel.angleDeg) / stepDeg);
        const moved = turnBetween(boundary * stepDeg, edge - channel.angleDeg) + move;
        const at = ((boundary % positions) + positions) % positions;
        latest[at] = Math.max(latest[at]!, moved);
        earliest[at] = Math.min(earliest[at]!, moved);
      }
    }
    for (let k = 0; k < positions; k++) {
      const width = stepDeg + earliest[(k + 1) % positions]! - latest[k]!;
      narrowest = Math.min(narrowest, width);
    }
  }
  return narrowest;
}

/** How far from where it is drawn an edge switches. [deg] */
function edgeMoveDeg(
  seen: SeenTrack,
  edge: number,
  sense: 'growing' | 'falling',
  levels: SwitchLights,
): number {
  const begins = seen.gains[edge]! > 0;
  const light = begins === (sense === 'growing') ? levels.risingLight : levels.fallingLight;
  const x = seen.spread.edgeAt(begins ? light : 1 - light);
  const sine = Math.max(-1, Math.min(1, (seen.movesMm[edge]! - x) / seen.radiusMm));
  return radToDeg(Math.asin(sine));
}
