import type { Board } from '../boards/index.ts';
import type { DiscPlan } from '../disc/index.ts';
import { throwIfAny, type Problem } from '../error/index.ts';
import { showNumber, showSignificant } from '../units/index.ts';
import { apertureFindings } from './checks/apertureChecks.ts';
import { circuitFindings } from './checks/circuitChecks.ts';
import type { ChannelPlan, HeadPlan, Rate, SpeedLimit } from './headPlan.ts';
import { LEAST_TURN_RATE_DEG_PER_S } from './headPlan.ts';
import type { CircuitSpec, HeadSpec } from './headSpec.ts';
import { channelLevels } from './circuit/levels.ts';
import { lightFindings } from './checks/lightChecks.ts';
import { impossibleValues } from './checks/specChecks.ts';
import { headSpeedLimit } from './circuit/speedLimit.ts';

/**
 * Lights and sensors placed over a disc, with the counts they give and how fast they follow.
 *
 * @param disc - The disc they look at.
 * @param spec - Detector, light, aperture and how well they are placed.
 * @param circuit - Divider, thresholds and noise.
 * @param board - Controller that reads them.
 * @param rate - How fast lines leave and the shaft may turn.
 * @throws `head/impossible-value` and `head/colours-unseen`, or together all of `head/no-contrast`, `head/resistor-unfit`,
 * `head/thresholds-crossed`, `head/mark-not-seen`, `head/spill-switches`, `head/laser-hazard` that hold.
 */
export function planHead(
  disc: DiscPlan,
  spec: HeadSpec,
  circuit: CircuitSpec,
  board: Board,
  rate: Rate,
): HeadPlan {
  throwIfAny([...impossibleValues(spec, circuit, rate), ...colourProblems(disc)]);
  const channels = placedChannels(disc);
  const levels = channelLevels(spec, circuit, board);
  const circuitFound = circuitFindings(spec, circuit, board, levels);
  // Without thresholds between lit and dark nothing can be said about marks and spill.
  const apertureFound =
    circuitFound.problems.length > 0 ? null : apertureFindings(disc, spec, channels, levels);
  const found = [circuitFound, lightFindings(spec, disc.code.channels.length, board), ...(apertureFound ? [apertureFound] : [])];
  throwIfAny(found.flatMap((finding) => finding.problems));
  const speed = headSpeedLimit(disc, spec, { channels, levels, circuit, board, rate });
  const warnings = [...found.flatMap((finding) => finding.warnings), ...speedWarnings(speed, rate)];
  return { disc, spec, circuit, board, rate, channels, levels, speed, warnings };
}

/** Neither detector tells one colour from another. */
function colourProblems({ code }: DiscPlan): Problem[] {
  const coloured = code.channels.filter(({ track }) => code.tracks[track]!.levelCount > 2);
  if (coloured.length === 0) return [];
  return [
    {
      code: 'head/colours-unseen',
      what: 'The code has three colours, and this head only tells light from dark.',
      where: 'disc.code',
      got: `${code.family} with ${coloured.length} channels of three levels`,
      allowed: 'a code of windows and lands',
      fix: 'Set disc.code to reflected-gray.',
    },
  ];
}

function placedChannels({ code, tracks }: DiscPlan): ChannelPlan[] {
  return code.channels.map(({ track, angleDeg }, channel) => ({
    channel,
    track,
    radiusMm: tracks[track]!.midRadiusMm,
    angleDeg,
  }));
}

/** A turn rate just below the limit that the instrument file takes; `null` where the limit is lower than any. [deg/s] */
function rateBelow(limitDegPerS: number): number | null {
  const parts = limitDegPerS < 10 ? 10 : 1;
  const rate = Math.floor(limitDegPerS * parts) / parts;
  return rate >= LEAST_TURN_RATE_DEG_PER_S ? rate : null;
}

function speedWarnings({ limitDegPerS, lagMs, loopMs }: SpeedLimit, rate: Rate): Problem[] {
  if (rate.turnRateDegPerS <= limitDegPerS) return [];
  const slower = lagMs > loopMs ? 'a faster detector' : 'fewer channels or a faster board';
  const rateThatWorks = rateBelow(limitDegPerS);
  const slowly = rateThatWorks === null ? '' : `, or set need.turnRateDegPerS to ${rateThatWorks}`;
  return [
    {
      code: 'head/turns-too-fast',
      what: 'At the wanted turn rate some positions pass before they are read.',
      where: 'need.turnRateDegPerS',
      got: `${showSignificant(rate.turnRateDegPerS, 6)} deg/s`,
      allowed: `up to ${showSignificant(limitDegPerS, 3)} deg/s (lag ${showNumber(lagMs, 2)} ms, loop ${showNumber(loopMs, 2)} ms)`,
      fix: `Use ${slower}${slowly}.`,
    },
  ];
}
