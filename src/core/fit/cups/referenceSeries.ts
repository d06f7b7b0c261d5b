import { cupCalibration, type CupCalibration } from '../../wind/index.ts';
import { cupsRefusal } from './refusals.ts';

/** A reading of cups or reference at an instant. */
export interface TimedValue {
  readonly timeMs: number;
  readonly value: number;
}

/** One block of time in which both were read. */
export interface Block {
  readonly timeMs: number;
  /** Pulses a second. [Hz] */
  readonly rateHz: number;
  /** Speed of the reference. [m/s] */
  readonly speedMPerS: number;
}

/** Cups fitted beside a reference. */
export interface FittedCups {
  readonly calibration: CupCalibration;
  readonly blocks: readonly Block[];
  /** Standard errors of offset and path, made larger for blocks that follow each other. [m/s], [m] */
  readonly offsetErrorMPerS: number;
  readonly pathErrorM: number;
  /** Blocks that are worth as much as independent ones. [-] */
  readonly independentBlocks: number;
  /** Speed at which the cups start: between the strongest wind they stood in and the weakest they turned in. [m/s] */
  readonly startingMPerS: { readonly stoodIn: number | null; readonly turnedIn: number };
}

/** Fewer independent blocks than this support no line. [-]; own choice */
const LEAST_BLOCKS = 8;
/** Highest over lowest speed without which slope and offset cannot be told apart. [-]; own choice */
const LEAST_SPAN = 1.5;

/** Means of pulses [Hz] and reference [m/s] over equal blocks of `blockMs` [ms] in which both were read. */
export function blocksOf(
  pulses: readonly TimedValue[],
  reference: readonly TimedValue[],
  blockMs: number,
): Block[] {
  const sums = new Map<number, { first: TimedValue; last: TimedValue; speeds: number[] }>();
  for (const pulse of pulses) {
    const block = Math.floor(pulse.timeMs / blockMs);
    const sum = sums.get(block);
    if (sum) sum.last = pulse;
    else sums.set(block, { first: pulse, last: pulse, speeds: [] });
  }
  for (const { timeMs, value } of reference) sums.get(Math.floor(timeMs / blockMs))?.speeds.push(value);
  return [...sums].flatMap(([block, { first, last, speeds }]): Block[] => {
    const seconds = (last.timeMs - first.timeMs) / 1000;
    const counted = last.value - first.value;
    // A counter that went back has restarted; a block half covered is no mean.
    if (seconds < (0.6 * blockMs) / 1000 || counted < 0 || speeds.length === 0) return [];
    const speedMPerS = speeds.reduce((sum, speed) => sum + speed, 0) / speeds.length;
    return [{ timeMs: block * blockMs, rateHz: counted / seconds, speedMPerS }];
  });
}

/** How alike neighbours are: correlation of residuals one block apart. [-], 0..1 */
function likeness(residuals: readonly number[]): number {
  const square = residuals.reduce((sum, r) => sum + r * r, 0);
  const lagged = residuals.slice(1).reduce((sum, r, i) => sum + r * residuals[i]!, 0);
  return square > 0 ? Math.min(0.95, Math.max(0, lagged / square)) : 0;
}

/**
 * Speed = offset + path · rate, fitted beside a reference: bench tunnel or second instrument.
 *
 * @param blocks - Means over equal times, as `blocksOf` gives them. [Hz], [m/s]
 * @throws `fit/too-few-blocks`, `fit/speeds-too-alike`, and what `cupCalibration` throws.
 * @source blocks that follow each other count as n (1 − r)/(1 + r) independent ones, r their lag-one correlation.
 * @check src/core/fit/cups/cups.test.ts
 */
export function fittedCups(blocks: readonly Block[]): FittedCups {
  const turning = blocks.filter(({ rateHz }) => rateHz > 0);
  if (turning.length < LEAST_BLOCKS) throw tooFewBlocks(turning.length);
  const speeds = turning.map(({ speedMPerS }) => speedMPerS);
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  if (high < LEAST_SPAN * Math.max(low, 0.1)) throw speedsTooAlike(low, high);
  const calibration = cupCalibration(
    blocks.map(({ rateHz }) => rateHz),
    blocks.map(({ speedMPerS }) => speedMPerS),
  );
  const alike = likeness(calibration.line.residuals);
  const independentBlocks = (turning.length * (1 - alike)) / (1 + alike);
  if (independentBlocks < LEAST_BLOCKS / 2) throw tooFewBlocks(independentBlocks);
  const wider = Math.sqrt(turning.length / independentBlocks);
  const stood = blocks.filter(({ rateHz }) => rateHz === 0).map(({ speedMPerS }) => speedMPerS);
  return {
    calibration,
    blocks,
    offsetErrorMPerS: calibration.line.interceptError * wider,
    pathErrorM: calibration.line.slopeError * wider,
    independentBlocks,
    startingMPerS: { stoodIn: stood.length > 0 ? Math.max(...stood) : null, turnedIn: low },
  };
}

function tooFewBlocks(found: number): Error {
  return cupsRefusal('fit/too-few-blocks', {
    what: 'Too few independent stretches of wind with turning cups to fit a line through.',
    where: 'reference',
    got: `${found.toFixed(1)} independent blocks`,
    allowed: `${LEAST_BLOCKS} or more`,
    fix: 'Record longer: several days of changing wind beside another instrument, or a car run each way at five speeds.',
  });
}

function speedsTooAlike(low: number, high: number): Error {
  return cupsRefusal('fit/speeds-too-alike', {
    what: 'The speeds lie so close together that offset and slope cannot be told apart.',
    where: 'reference',
    got: `${low.toFixed(1)} to ${high.toFixed(1)} m/s`,
    allowed: `the highest at least ${LEAST_SPAN} times the lowest`,
    fix: `Add speeds up to ${(2 * low).toFixed(0)} m/s or more.`,
  });
}
