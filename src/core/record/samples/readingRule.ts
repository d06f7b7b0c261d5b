import type { Instrument } from '../../instrument/index.ts';
import type { DateOrder } from '../time/dateText.ts';
import type { Placement } from '../time/placeSegments.ts';

/** Units of speed a log may have. */
export type LogSpeedUnit = 'm/s' | 'km/h' | 'kt' | 'mph' | 'ft/s';

/** Everything that the reading of raw bytes depends on beside the bytes; another rule gives another reading. */
export interface ReadingRule {
  /** Turns pulses into speed: wind per pulse [m] and speed of the fitted line at no pulses [m/s]; `null` = cups not calibrated. */
  readonly cups: { readonly runPerPulseM: number; readonly startSpeedMPerS: number } | null;
  /** Positions of the disc, for logs of position numbers; `null` = not known. [-] */
  readonly positions: number | null;
  /** Channels of the head, for words that lost zeros; `null` = not known. [-] */
  readonly channels: number | null;
  /** Time zone of times that do not say theirs: `UTC`, `+01:00`, `Europe/Berlin`. */
  readonly zone: string;
  /** `null` = told by a day above 12, else guessed day first. */
  readonly dateOrder: DateOrder | null;
  /** `null` = detected. */
  readonly decimalComma: boolean | null;
  /** `null` = as the column says, else guessed m/s. */
  readonly speedUnit: LogSpeedUnit | null;
  /** `null` = detected: numbers up to 15 or 31 are positions. */
  readonly headingAs: 'degrees' | 'positions' | null;
  /** `null` = told by the letters used. */
  readonly compassLanguage: 'english' | 'german' | 'romance' | null;
  /** Length of the periods of a log that labels them by their start, to be moved; 0 = labelled by the end. [ms] */
  readonly startLabelledMs: number;
  /** Speeds above this are flagged. [m/s] */
  readonly speedMostMPerS: number;
  /** Runs without a clock, placed; see `placeSegments`. */
  readonly placements: readonly Placement[];
}

/** WMO-No. 8 asks instruments to measure up to 75 m/s (value from memory). [m/s] */
const SPEED_MOST_M_PER_S = 75;

/** Reading without an instrument file and without any choice. */
export const PLAIN_RULE: ReadingRule = {
  cups: null,
  positions: null,
  channels: null,
  zone: 'UTC',
  dateOrder: null,
  decimalComma: null,
  speedUnit: null,
  headingAs: null,
  compassLanguage: null,
  startLabelledMs: 0,
  speedMostMPerS: SPEED_MOST_M_PER_S,
  placements: [],
};

/**
 * How the lines of an instrument are read.
 *
 * @param instrument - Its cups and positions are used. [m, m/s, -]
 * @param channels - Light sensors of its head. [-]
 */
export function readingRuleOf(
  instrument: {
    readonly cups: Pick<NonNullable<Instrument['cups']>, 'runPerPulseM' | 'startSpeedMPerS'> | null;
  } & {
    readonly need: Pick<Instrument['need'], 'positions'>;
  },
  channels: number | null,
): ReadingRule {
  const { cups, need } = instrument;
  const isCalibrated = cups !== null && cups.runPerPulseM !== null;
  return {
    ...PLAIN_RULE,
    cups: isCalibrated ? { runPerPulseM: cups.runPerPulseM!, startSpeedMPerS: cups.startSpeedMPerS } : null,
    positions: need.positions,
    channels,
  };
}
