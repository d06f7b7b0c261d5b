import type { HeadPlan } from '../head/index.ts';
import type { Need } from '../instrument/index.ts';
import { showDegrees, showMm, showNumber, showSignificant } from '../units/index.ts';
import { goodOf, tooFewToTell } from './enoughBuilds.ts';
import type { BuildStatistics, Cause, ExactTurn, ReadingErrors } from './proof.ts';
import { familyTitle, jumpText, showShareOf } from './rival.ts';

/** What a verdict rests on. */
export interface Evidence {
  readonly head: HeadPlan;
  readonly need: Need;
  readonly exactTurn: ExactTurn;
  /** The same at night, where thresholds were set in daylight; `null` where that changes nothing. */
  readonly atNight: ReadingErrors | null;
  readonly builds: BuildStatistics;
  readonly causes: readonly Cause[];
}

/** Figures that show a number of the file as the maker wrote it. [-] */
const AS_WRITTEN = 6;

/** Everything that makes the verdict no, in sentences; empty when the design will read right. */
export function shortfalls(evidence: Evidence): string[] {
  const found = [
    ...evidence.head.faults.map(({ what, got, fix }) => `${what} Found: ${got}. ${fix}`),
    tooCoarse(evidence),
    forgets(evidence),
    ...asDrawn(evidence),
    byNight(evidence),
    tooFast(evidence),
    tooFew(evidence),
  ];
  const sentences = found.filter((sentence) => sentence !== null);
  if (sentences.length === 0) return [];
  const jumps = jumpText(evidence.head.disc.code);
  return jumps === null ? sentences : [...sentences, `${jumps} A Gray code changes one channel at a time.`];
}

/** Why the verdict is yes. */
export function merits({ head, need, builds }: Evidence): string[] {
  const { low, high } = builds.yield;
  const unsure = tooFewToTell(builds, need.wantedYield);
  const percent = (share: number): string => showNumber(100 * share, 1);
  const step = 360 / head.disc.code.positions;
  const beyondStep =
    need.accuracyDeg > step && builds.misreadShare > 0
      ? [
          `You accept more than a step of ${showDegrees(step)}: over ${showShareOf(builds.misreadShare)} of the turn, ` +
            'all builds together, the position shown is not the right one nor its neighbour.',
        ]
      : [];
  return [
    `${goodOf(builds)} virtual builds (${percent(low)} to ${percent(high)} %) read within ${showDegrees(need.accuracyDeg)} ` +
      `everywhere, both ways round; you ask for ${percent(need.wantedYield)} %.`,
    ...(unsure === null ? [] : [unsure]),
    `95 % of them are never more than ${showDegrees(builds.maxErrorDeg.p95)} out, half a step of ` +
      `${showDegrees(step / 2)} included.`,
    ...beyondStep,
    `It is read at up to ${showSignificant(head.speed.limitDegPerS, 2)} deg/s; you ask for ${showSignificant(need.turnRateDegPerS, AS_WRITTEN)} deg/s.`,
  ];
}

/** What a maker must know of a code that does not tell its position by itself; `null` where it does. */
export function memoryNote({ disc }: HeadPlan): string | null {
  if (disc.code.absolute) return null;
  return (
    'This disc only counts steps: after a power cut it does not know where it stands until its index has passed, or ' +
    'until it is set by hand. A wind vane may stand still for days.'
  );
}

/** A wheel that counts cannot serve where the direction must be known as the power returns. */
function forgets({ head, need }: Evidence): string | null {
  if (!need.mustSurvivePowerLoss || head.disc.code.absolute) return null;
  return 'You ask that the direction be known as soon as the power returns, and this disc only counts: choose a code that tells it from one reading, or set need.mustSurvivePowerLoss to false.';
}

function tooCoarse({ head, need }: Evidence): string | null {
  const { positions } = head.disc.code;
  const half = 180 / positions;
  if (need.accuracyDeg >= half) return null;
  const enough = 2 * Math.ceil(90 / need.accuracyDeg);
  return (
    `${positions} positions cannot be read to within ${showDegrees(need.accuracyDeg)}, since half a step is ${showDegrees(half)}: ` +
    `set need.positions to ${enough} or more, or need.accuracyDeg to more than ${showDegrees(half)}.`
  );
}

/** What is wrong before any error of making. */
function asDrawn({ head, need, exactTurn }: Evidence): (string | null)[] {
  const { maxDeg, misreadShare, illegalShare, unseenPositions } = exactTurn.errors;
  const half = 180 / head.disc.code.positions;
  if (maxDeg === null) return ['Even made exactly as drawn it never shows a position at all.'];
  const isTooFar = maxDeg > need.accuracyDeg + ROUNDING_DEG;
  return [
    need.accuracyDeg >= half && isTooFar
      ? `Even made exactly as drawn it reads up to ${showDegrees(maxDeg)} out.${edgeShiftText(head)}`
      : null,
    misreadShare > 0 && isTooFar
      ? `Even made exactly as drawn it is more than a step out over ${showShareOf(misreadShare)} of the turn.`
      : null,
    illegalShare > 0
      ? `Even made exactly as drawn it shows words that do not exist over ${showShareOf(illegalShare)} of the turn.`
      : null,
    unseenPositions.length > 0
      ? `Even made exactly as drawn it never shows ${listOf(unseenPositions)}.`
      : null,
  ];
}

/** What daylight that goes does to a design that reads right at noon. */
function byNight({ head, need, exactTurn, atNight }: Evidence): string | null {
  if (atNight === null) return null;
  const isWrong = ({ maxDeg, illegalShare, unseenPositions }: ReadingErrors): boolean =>
    maxDeg === null ||
    maxDeg > need.accuracyDeg + ROUNDING_DEG ||
    illegalShare > 0 ||
    unseenPositions.length > 0;
  if (isWrong(exactTurn.errors) || !isWrong(atNight)) return null;
  const share = showNumber(100 * (head.spec.daylightShare ?? 0), 1);
  const seen =
    atNight.maxDeg === null
      ? 'it shows no position at all'
      : atNight.unseenPositions.length > 0
        ? `it never shows ${listOf(atNight.unseenPositions)}`
        : atNight.illegalShare > 0
          ? `it shows words that do not exist over ${showShareOf(atNight.illegalShare)} of the turn`
          : `it reads up to ${showDegrees(atNight.maxDeg)} out`;
  return (
    `Thresholds set at noon, with daylight of ${share} % of a window's light, do not serve at night: then ${seen}. ` +
    'Pulse the lights, so that daylight is taken off each reading, or close the housing against it.'
  );
}

/** Half a step is met by a disc without error, give or take the rounding of sums of angles. [deg] */
const ROUNDING_DEG = 1e-9;

/** What the thresholds and the process do to every edge, with a space before; empty for a code whose words do the harm. */
function edgeShiftText({ levels, disc }: HeadPlan): string {
  if (jumpText(disc.code) !== null) return '';
  if (![levels.risingLight, levels.fallingLight].every((light) => light > 0 && light < 1)) return '';
  const middle = (levels.risingLight + levels.fallingLight) / 2;
  const { windowGrowthMm } = disc.spec.process;
  const change = `${showMm(Math.abs(windowGrowthMm))} ${windowGrowthMm > 0 ? 'wider' : 'narrower'}`;
  const growth = windowGrowthMm === 0 ? '' : ` Windows come out ${change} than drawn.`;
  return (
    ` A channel changes at ${showNumber(100 * middle, 1)} % of full light, and the farther that is from 50 % the wider or ` +
    `narrower every window looks: narrow the spot, or use a phototransistor, which is linear.${growth}`
  );
}

function listOf(positions: readonly number[]): string {
  const shown = positions.slice(0, 5).join(', ');
  const rest = positions.length > 5 ? ` and ${positions.length - 5} more` : '';
  return `${positions.length === 1 ? 'position' : 'positions'} ${shown}${rest}`;
}

function tooFast({ head, need }: Evidence): string | null {
  const { limitDegPerS, lagMs, loopMs } = head.speed;
  // What never changes is not slow; why it never does is told already.
  if (!Number.isFinite(lagMs)) return null;
  if (need.turnRateDegPerS <= limitDegPerS) return null;
  return (
    `At ${showSignificant(need.turnRateDegPerS, AS_WRITTEN)} deg/s some positions pass unread: the limit is ${showSignificant(limitDegPerS, 2)} deg/s, ` +
    `from ${showNumber(lagMs, 1)} ms of lag in the sensor and ${showNumber(loopMs, 1)} ms for one read with its line.`
  );
}

function tooFew({ need, builds, causes, head }: Evidence): string | null {
  if (builds.yield.value >= need.wantedYield) return null;
  const percent = (share: number): string => showNumber(100 * share, 1);
  const [first] = causes;
  const unsure = tooFewToTell(builds, need.wantedYield);
  const gain = first ? first.yieldWithout.value - builds.yield.value : 0;
  const help =
    first && gain > 0
      ? ` The worst cause is "${first.title.toLowerCase()}": without it ${percent(first.yieldWithout.value)} % would. ${first.advice}`
      : '';
  return (
    `Only ${goodOf(builds)} virtual builds in ${familyTitle(head.disc.code.family)} read within ` +
    `${showDegrees(need.accuracyDeg)} everywhere; you ask for ${percent(need.wantedYield)} %.${help}${unsure === null ? '' : ` ${unsure}`}`
  );
}
