import type { DiscSpec } from '../disc/index.ts';
import type { AsBuilt } from './asBuilt.ts';
import type { CircuitSpec, HeadSpec } from '../head/index.ts';
import type { PartsSpec } from './partsSpec.ts';
import type { Degrees } from '../units/index.ts';
import type { movers, toolNames } from './schema/sensing.ts';

/** A tool that a way of sensing may ask for. */
export type Tool = (typeof toolNames)[number];

/** What is asked of the way of sensing, whichever it is. */
export interface SensingNeed {
  readonly turnedBy: (typeof movers)[number];
  /** Whether a sensor can sit on the axis, at an end of the shaft. */
  readonly shaftEnd: 'free' | 'closed';
  /** Turning moment that the sensor may take for itself. [N mm] */
  readonly startTorqueNmm: number;
  readonly lifeYears: number;
  /** Parts of the sensing, controller and housing not counted. [EUR] */
  readonly budgetEur: number;
  readonly tools: readonly Tool[];
  readonly powerCutsPerYear: number;
  /** To and fro added up; `null` = reckoned from the wind, or 4. [-] */
  readonly turnsPerDay: number | null;
  /** A dead lamp or a broken wire must show itself. */
  readonly mustShowFaults: boolean;
}

/** What the instrument must do. */
export interface Need {
  /** N, the equal steps of a turn. [-] */
  readonly positions: number;
  /** Largest error the maker accepts, quantisation included. [deg] */
  readonly accuracyDeg: Degrees;
  /** Fastest turn at which every position must still be read. [deg/s] */
  readonly turnRateDegPerS: number;
  /** How far the shaft can turn; 360 where it turns freely. [deg] */
  readonly turnRangeDeg: Degrees;
  /** The direction must be known at switching on, before anything has turned. */
  readonly mustSurvivePowerLoss: boolean;
  /** Share of virtual builds that must meet the need. [-], 0..1 */
  readonly wantedYield: number;
}

/** Controller and what it sends. */
export interface ControllerSpec {
  /** Name of a board the tool knows. */
  readonly board: string;
  /** Pin or input of each channel; `null` takes the first free ones in order. */
  readonly channelPins: readonly string[] | null;
  /** Serial speed. [bit/s] */
  readonly baud: number;
  /** What a line looks like. */
  readonly format: 'text' | 'json-lines' | 'nmea-mwd' | 'nmea-mwv' | 'senml';
  /** Time between two lines. [ms] */
  readonly lineIntervalMs: number;
}

/** Cups and their switch; `null` where the instrument has none. */
export interface CupsSpec {
  readonly pulsesPerTurn: number;
  readonly pin: string;
  /** A contact counts only after this long without any edge. [us] */
  readonly quietUs: number;
  /** Wind that passes for one pulse; `null` for cups not yet calibrated. [m] */
  readonly runPerPulseM: number | null;
  /** Wind speed of the fitted line at no pulses. [m/s] */
  readonly startSpeedMPerS: number;
}

/** What it runs on. */
export interface PowerSpec {
  /** What the controller does between two reads. */
  readonly sleep: 'awake' | 'idle' | 'deep';
  /** `null` for an adapter that never stops. [mAh], [V] */
  readonly battery: { readonly capacityMah: number; readonly voltageV: number } | null;
  readonly regulator: 'linear' | 'switching';
  /** Current of the whole board without lights and sensors; `null` takes the usual one. [mA] */
  readonly boardMa: number | null;
  /** Hours of full sun a day on the panel in the darkest month; `null` without a panel. [h] */
  readonly sunHoursPerDay: number | null;
  /** Days that the battery must last without any sun. [-] */
  readonly darkDays: number;
}

/** One setting of north with its day, kept for good. */
export interface NorthSetting {
  /** From when on it holds. ISO 8601, UTC */
  readonly since: string;
  /** Value of `northOffsetDeg` from then on. [deg], [0, 360) */
  readonly offsetDeg: Degrees;
  /** Standard error. [deg] */
  readonly sigmaDeg: Degrees;
  /** How it was found, in words. */
  readonly by: string;
}

/** Wind of a site, as far as an index or a gap meets it. */
export interface SiteWind {
  /** Of equal sectors, the first centred on north, then clockwise, in any one unit; `null` = all alike. [-] */
  readonly sectorShares: readonly number[] | null;
  /** Mean time between changes of weather, each with a direction of its own. [h] */
  readonly weatherHours: number;
  /** Standard deviation of what the direction wanders in an hour between them. [deg] */
  readonly hourChangeDeg: Degrees;
  /** Standard deviation within ten minutes. [deg] */
  readonly swingDeg: Degrees;
  /** Share of the time in which nothing moves. [-] */
  readonly calmShare: number;
}

/** Where it stands. */
export interface SiteSpec {
  readonly place: string;
  /** North positive; `null` = not stated. [deg] */
  readonly latitudeDeg: Degrees | null;
  /** East positive; `null` = not stated. [deg] */
  readonly longitudeDeg: Degrees | null;
  /** Mast above ground. [m] */
  readonly mastHeightM: number;
  /** Heading shown when the index mark stands at the head's reference line, clockwise from true north. [deg] */
  readonly northOffsetDeg: Degrees;
  /** Settings of north, youngest last. */
  readonly northHistory: readonly NorthSetting[];
  readonly wind: SiteWind;
  /** Magnetic field near the shaft. [mT] */
  readonly strayFieldMt: number;
}

/** One instrument file, read, checked and with every default filled in. */
export interface Instrument {
  readonly name: string;
  readonly need: Need;
  readonly sensing: SensingNeed;
  readonly disc: DiscSpec;
  readonly head: HeadSpec;
  readonly circuit: CircuitSpec;
  readonly controller: ControllerSpec;
  readonly cups: CupsSpec | null;
  readonly power: PowerSpec;
  readonly site: SiteSpec;
  readonly parts: PartsSpec;
  /** What a recorded turn of the finished build has shown; `null` before there is one. */
  readonly asBuilt: AsBuilt | null;
}
