import { lightLevel, signalOf, type HeadPlan, type SeenTrack, type Signal } from '../../head/index.ts';
import { degToRad, radToDeg, seededRandom, turnBetween, type Random } from '../../units/index.ts';
import { causeSizes, drawerOf, streamsOf, BUILDS_PER_BLOCK } from '../builds/draws.ts';
import { drawnConditions, type Conditions } from '../turn/conditions.ts';
import { movedMm } from '../turn/builtTrack.ts';
import { turnModel, type TurnModel } from '../turn/turnModel.ts';
import type { FineBoundary } from './fineBoundaries.ts';

/** How well a disc is read between its steps, over many builds and angles. */
export interface FineErrors {
  /** Root mean square of shown less true. [deg] */
  readonly rmsDeg: number;
  /** Error that 95 of 100 readings stay below. [deg] */
  readonly p95Deg: number;
  readonly worstDeg: number;
  /** Share of readings whose word is none of the code, and which therefore tell nothing. [-] */
  readonly unreadShare: number;
}

/** Angles tried in a turn of each build. */
const ANGLES = 24;

/**
 * Part-to-part standard deviation of a photoresistor's gamma, which a calibration of lit and dark alone does not take out. [-]
 *
 * @source data sheets state gamma within 0.1, taken as two standard deviations.
 */
const GAMMA_SD = 0.05;

/**
 * Reads virtual builds between their steps.
 *
 * All channels are cut at half light to find the step; of the two channels that change at its ends, the one nearer to half
 * light tells how far the step has been passed, through the detector's own curve and the spot's. Its lit and dark counts
 * are those of the channel itself, measured once round.
 *
 * @param head - The design. @param list - Boundary before each position.
 * @param draws - Builds made and their seed. [-]
 * @source derived: θ = edge − asin((x − move)/r), T(x) = light.
 * @check src/core/proof/fine/fine.test.ts
 */
export function fineErrors(
  head: HeadPlan,
  list: readonly FineBoundary[],
  draws: { readonly builds: number; readonly seed: number },
): FineErrors {
  const model = turnModel(head);
  const conditions = drawnConditions(model);
  const drawer = drawerOf(model, causeSizes(head, null));
  const noise = seededRandom(draws.seed ^ 0x5eed);
  const errors: number[] = [];
  let unread = 0;
  for (let build = 0; build < draws.builds; build++) {
    const block = Math.floor(build / BUILDS_PER_BLOCK);
    drawer.draw(streamsOf(draws.seed, block * BUILDS_PER_BLOCK + build), conditions);
    const channels = builtChannels(model, conditions, noise);
    for (let i = 0; i < ANGLES; i++) {
      const angle = (360 * (i + noise.uniform())) / ANGLES;
      const shown = fineAngle(model, channels, list, angle, noise);
      if (shown === null) unread += 1;
      else errors.push(Math.abs(turnBetween(angle, shown)));
    }
  }
  return summaryOf(errors, unread);
}

function summaryOf(errors: number[], unread: number): FineErrors {
  if (errors.length === 0) return { rmsDeg: 180, p95Deg: 180, worstDeg: 180, unreadShare: 1 };
  errors.sort((a, b) => a - b);
  const square = errors.reduce((sum, error) => sum + error * error, 0);
  return {
    rmsDeg: Math.sqrt(square / errors.length),
    p95Deg: errors[Math.min(errors.length - 1, Math.floor(0.95 * errors.length))]!,
    worstDeg: errors.at(-1)!,
    unreadShare: unread / (errors.length + unread),
  };
}

/** One channel as it was built, and as its owner knows it. */
interface BuiltChannel {
  readonly seen: SeenTrack;
  readonly aheadDeg: number;
  /** Light to counts of the part that was built in. [counts] */
  readonly signal: Signal;
  readonly part: number;
}

function builtChannels(model: TurnModel, conditions: Conditions, noise: Random): BuiltChannel[] {
  const { spec, circuit, board, levels } = model.head;
  const sizes = causeSizes(model.head, null);
  return model.channels.map(({ seen, firstEdge, angleDeg }, c) => {
    const movesMm = seen.edgesDeg.map((_, i) => movedMm(model, conditions, firstEdge + i));
    const widestMoveMm = movesMm.reduce((widest, move) => Math.max(widest, Math.abs(move)), 0);
    const radiusMm = seen.radiusMm + conditions.acrossMm[c]!;
    const { detector } = spec;
    const bent =
      detector.kind === 'photoresistor'
        ? { ...detector, gamma: Math.max(0.2, detector.gamma + GAMMA_SD * noise.normal()) }
        : detector;
    return {
      seen: { ...seen, movesMm, widestMoveMm, radiusMm },
      aheadDeg: angleDeg + radToDeg(conditions.alongMm[c]! / radiusMm),
      signal: signalOf(bent, levels.resistorOhm, circuit.sensorTo, board),
      part: Math.exp(sizes.part * noise.normal()),
    };
  });
}

/** Angle shown for a disc at an angle, or `null` where the word is none of the code. [deg] */
function fineAngle(
  model: TurnModel,
  channels: readonly BuiltChannel[],
  list: readonly FineBoundary[],
  angle: number,
  noise: Random,
): number | null {
  const { head } = model;
  const lights = channels.map((channel) => lightRead(head, channel, angle, noise));
  const digits = lights.map((light) =>
    light >= 0.5 ? head.disc.spec.windowLevel : 1 - head.disc.spec.windowLevel,
  );
  const position = head.disc.code.positionOf(digits.join(''));
  if (position === null) return null;
  const ends = [list[position]!, list[(position + 1) % list.length]!];
  const [near] = ends.sort((a, b) => Math.abs(lights[a.channel]! - 0.5) - Math.abs(lights[b.channel]! - 0.5));
  const { channel, edge, gain } = near!;
  // As drawn: what is wrong with this build is not known to its reader.
  const { seen, angleDeg } = model.channels[channel]!;
  const light = Math.min(1 - 1e-6, Math.max(1e-6, lights[channel]!));
  const x = seen.spread.edgeAt(gain > 0 ? light : 1 - light);
  const past = radToDeg(Math.asin(Math.max(-1, Math.min(1, (seen.movesMm[edge]! - x) / seen.radiusMm))));
  return seen.edgesDeg[edge]! - angleDeg + past;
}

/** Light that a reader makes of a channel's counts, from its own counts lit and dark and the detector's usual curve. [-] */
function lightRead(
  head: HeadPlan,
  { seen, aheadDeg, signal, part }: BuiltChannel,
  angle: number,
  noise: Random,
): number {
  const { spec, circuit, board, levels } = head;
  const counts = signal.counts(lightLevel(seen, angle + aheadDeg), part, 1);
  const read = Math.floor(counts + circuit.noiseCounts * noise.normal()) + 0.5;
  const usual = signalOf(spec.detector, levels.resistorOhm, circuit.sensorTo, board);
  return usual.light(Math.min(usual.scaleCounts - 0.5, Math.max(0.5, read)), part, 1);
}

/** Arc at which a track's edge is seen to move, half each way. [deg] */
export function rampDeg({ spread, radiusMm }: SeenTrack): number {
  return 2 * radToDeg(Math.asin(Math.min(1, spread.edgeAt(0.02) / radiusMm)));
}

/** Width that a slit needs for an edge to be in it at any place of a step. [mm] */
export function slitForStepMm(stepDeg: number, radiusMm: number): number {
  return 2 * radiusMm * Math.tan(degToRad(stepDeg / 2));
}
