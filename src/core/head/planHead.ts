import type { Board } from '../boards/index.ts';
import type { DiscPlan } from '../disc/index.ts';
import { throwIfAny, type Problem } from '../error/index.ts';
import { showNumber, showSignificant } from '../units/index.ts';
import { apertureFindings } from './checks/apertureChecks.ts';
import { circuitFindings } from './checks/circuitChecks.ts';
import { daylightFindings } from './checks/daylightChecks.ts';
import type { Findings } from './checks/findings.ts';
import { ladderProblems } from './checks/ladderChecks.ts';
import { markedTracks, markFindings, unseenMarks } from './checks/markChecks.ts';
import type { ChannelPlan, HeadPlan, Levels, Rate, SpeedLimit } from './headPlan.ts';
import { LEAST_TURN_RATE_DEG_PER_S } from './headPlan.ts';
import type { CircuitSpec, HeadSpec } from './headSpec.ts';
import { kelvinRange } from './circuit/climate.ts';
import { LADDER_CHANNELS_MOST, ladderPlan, type LadderPlan } from './circuit/ladder.ts';
import { channelLevels } from './circuit/levels.ts';
import { detectorOver, leakProblems } from './light/background.ts';
import { markPlan, markReaderOf, type MarkPlan } from './marks/markPlan.ts';
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
 * @returns The head. Where it could never read its disc it says so in `faults`: any of `head/no-contrast`,
 * `head/resistor-unfit`, `head/thresholds-crossed`, `head/daylight-saturates`, `head/unread-at-night`, `head/mark-not-seen`, `head/spill-switches`,
 * `head/rib-hides-window`, `head/colours-unseen`, `head/marks-alike`, `head/ladder-words-alike`, `head/never-settles`,
 * `head/gate-never-switches`, `head/resistor-burns`.
 * @throws Together all of `head/impossible-value`, `head/leak-far-off`, `head/laser-hazard` that hold.
 */
export function planHead(
  disc: DiscPlan,
  spec: HeadSpec,
  circuit: CircuitSpec,
  board: Board,
  rate: Rate,
): HeadPlan {
  const impossible = impossibleValues(spec, circuit, rate);
  const light = lightFindings(spec, disc.code.channels.length, board);
  throwIfAny([...impossible, ...(impossible.length > 0 ? [] : leakProblems(spec, disc))]);
  const behind = { ...spec, detector: detectorOver(spec, disc, circuit) };
  const channels = placedChannels(disc);
  const ladder = ladderOf(behind, circuit, board, channels.length);
  const nominal = channelLevels(behind, circuit, board);
  // The converter looks into the ladder, whatever stands behind its gates.
  const levels = ladder ? { ...nominal, sourceOhm: ladder.sourceOhm } : nominal;
  const found = readingFindings(disc, behind, { circuit, board, levels, channels, ladder });
  // A beam that can hurt ends the work; what else is wrong is told with it.
  if (light.problems.length > 0) throwIfAny([...light.problems, ...found.problems]);
  const speed = headSpeedLimit(disc, behind, { channels, levels, marks: found.marks, circuit, board, rate });
  const warnings = [...found.warnings, ...light.warnings, ...speedWarnings(speed, rate)];
  const { marks, problems: faults } = found;
  const plan = { disc, asked: spec, spec: behind, circuit, board, rate, channels, levels };
  return { ...plan, marks, ladder, speed, faults, warnings };
}

interface ReadingParts {
  readonly circuit: CircuitSpec;
  readonly board: Board;
  readonly levels: Levels;
  readonly channels: readonly ChannelPlan[];
  readonly ladder: LadderPlan | null;
}

/** All channels on one wire; `null` for every other input, and for more channels than any wire holds. */
function ladderOf(spec: HeadSpec, circuit: CircuitSpec, board: Board, channels: number): LadderPlan | null {
  if (circuit.input !== 'ladder' || channels > LADDER_CHANNELS_MOST) return null;
  return ladderPlan(circuit, board, channels, farthestKelvin(spec));
}

/** Farthest from the temperature of the setting. [K] */
function farthestKelvin(spec: HeadSpec): number {
  const { colder, hotter } = kelvinRange(spec);
  return Math.max(-colder, hotter);
}

/** Whether what the channels see can be read, and how three marks are told apart. */
function readingFindings(
  disc: DiscPlan,
  spec: HeadSpec,
  { circuit, board, levels, channels, ladder }: ReadingParts,
): Findings & { readonly marks: MarkPlan | null } {
  const coloured = markedTracks(disc).length > 0;
  const { detector } = spec;
  const { resistorOhm } = levels;
  const marks = coloured ? markPlan(detector, resistorOhm, circuit, board) : null;
  const found: Findings[] = [
    circuitFindings(spec, circuit, board, levels),
    daylightFindings(spec, circuit, board, levels),
    { problems: unseenMarks(disc, marks), warnings: [] },
    {
      problems: ladderProblems(ladder, circuit, board, {
        channels: channels.length,
        kelvin: farthestKelvin(spec),
      }),
      warnings: [],
    },
  ];
  // Without thresholds between lit and dark nothing can be said about marks and spill.
  const isReadable = found.every(({ problems }) => problems.length === 0);
  if (isReadable && marks) {
    const reader = markReaderOf({ detector, circuit, board, resistorOhm, plan: marks });
    found.push(markFindings(disc, spec, marks, reader));
  }
  if (isReadable && !marks) found.push(apertureFindings(disc, spec, channels, levels));
  return {
    marks,
    problems: found.flatMap(({ problems }) => problems),
    warnings: found.flatMap(({ warnings }) => warnings),
  };
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
  if (rate.turnRateDegPerS <= limitDegPerS || !Number.isFinite(lagMs)) return [];
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
