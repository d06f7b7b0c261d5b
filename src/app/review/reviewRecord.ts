import { throwIfAny } from '../../core/error/index.ts';
import {
  eachSample,
  faultSetting,
  FaultWatch,
  MonthPrints,
  type FaultSetting,
} from '../../core/faults/index.ts';
import type { Instrument } from '../../core/instrument/index.ts';
import {
  readingWidths,
  RecordSum,
  reviewOf,
  sampleIntervalMs,
  type FoundFaults,
  type OtherRecord,
  type Review,
  type ReviewChoices,
} from '../../core/review/index.ts';
import { calmThreshold } from '../../core/wind/index.ts';
import type {
  Fonts,
  InstrumentFiles,
  OutputFolder,
  RecordReading,
  SampleWindow,
  StationSpan,
  StopSign,
  Written,
} from '../../ports/index.ts';
import { readDesign } from '../design.ts';
import { logDesign } from '../logSources.ts';
import { filesOf } from './reviewFiles.ts';
import {
  againstOf,
  noSamples,
  noStation,
  stationOf,
  windowProblem,
  type Against,
  type ReviewRequest,
} from './reviewRequest.ts';

/** What a review needs of the world. */
export interface ReviewPorts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
  readonly fonts: Fonts;
  readonly store: RecordReading;
  /** Hears what is being done and how much of it is done. [-], 0..1 */
  readonly onProgress?: (what: string, share: number) => void;
}

/** What is needed of the world before anything is written. */
type ReadingPorts = Pick<ReviewPorts, 'files' | 'store' | 'onProgress'>;

/** A review and what was written of it. */
export interface Reviewed {
  readonly review: Review;
  /** Why the data falls short; empty when it does not. */
  readonly reasons: readonly string[];
  readonly written: Written;
}

/** Speed at which a vane must turn at the latest. [m/s] @source EPA-454/R-99-005 (2000), section 2.2.1 */
const VANE_STARTS_M_PER_S = 0.5;

/** Coverage below which the data falls short. [-] @source EPA-454/R-99-005 (2000), section 5.3.2 */
const COVERED = 0.9;

/** How every record of a review is gone through. */
interface Going {
  readonly choices: ReviewChoices;
  readonly setting: FaultSetting;
  /** Time between two lines as the instrument file has it. [ms] */
  readonly lineIntervalMs: number;
}

/** A period includes its end and not its start: a sample at midnight belongs to the day that ends there. */
function within({ station, fromMs, untilMs }: SampleWindow): SampleWindow {
  return { station, fromMs: fromMs + 1, untilMs: untilMs + 1 };
}

/** Faults that a window shows, also against a station nearby. */
async function faultsOf(
  { store, onProgress }: ReadingPorts,
  window: SampleWindow,
  setting: FaultSetting,
  nearby: SampleWindow | null,
): Promise<FoundFaults> {
  const watch = new FaultWatch(setting);
  const prints = new MonthPrints(setting.code);
  if (nearby) {
    for await (const columns of store.faultColumns(within(nearby)))
      eachSample(columns, ({ atMs, headingDeg }) => watch.addNeighbour(nearby.station, atMs, headingDeg));
  }
  const { fromMs, untilMs } = window;
  for await (const columns of store.faultColumns(within(window))) {
    eachSample(columns, (sample) => {
      watch.add(sample);
      prints.add(sample);
    });
    onProgress?.('looking for faults', (columns.atMs.at(-1)! - fromMs) / (untilMs - fromMs));
  }
  return { findings: watch.findings(), prints: prints.result() };
}

/** Samples of a window, gone through for faults and then for the wind. */
async function recordOf(
  ports: ReadingPorts,
  window: SampleWindow,
  going: Going,
  nearby: SampleWindow | null,
): Promise<RecordSum | null> {
  const { choices, setting, lineIntervalMs } = going;
  const faults = await faultsOf(ports, window, setting, nearby);
  let record: RecordSum | null = null;
  const { fromMs, untilMs } = window;
  for await (const columns of ports.store.columns(within(window))) {
    record ??= new RecordSum(choices, sampleIntervalMs(columns.atMs) ?? lineIntervalMs, faults);
    record.addColumns(columns);
    ports.onProgress?.('reading the wind', (columns.atMs.at(-1)! - fromMs) / (untilMs - fromMs));
  }
  record?.end();
  return record;
}

function choicesOf(request: Omit<ReviewRequest, 'out'>, instrument: Instrument): ReviewChoices {
  const { cups, need } = instrument;
  const starts = { cupsStartMPerS: cups?.startSpeedMPerS ?? 0, vaneStartMPerS: VANE_STARTS_M_PER_S };
  return {
    sectors: request.sectors,
    equalWeight: request.equalWeight,
    utcOffsetMin: request.utcOffsetMin,
    calmBelowMPerS: request.calmBelowMPerS ?? calmThreshold(starts),
    turnRateDegPerS: need.turnRateDegPerS,
    widths: readingWidths(instrument),
  };
}

/** Why the data falls short, in sentences. */
export function shortReasons({ coverage, distribution, findings }: Review): string[] {
  const { both, heading } = coverage.whole;
  const share = distribution ? both : heading;
  const what = distribution ? 'speed and direction' : 'direction';
  const covered = (100 * share).toFixed(1);
  return [
    ...findings.map(({ title, todo }) => `${title}. ${todo}`),
    ...(share >= COVERED
      ? []
      : [`Only ${covered} % of the time has ${what}; ${100 * COVERED} % are asked for.`]),
  ];
}

/** The other record, gone through; `null` without a comparison. */
async function otherOf(
  ports: ReadingPorts,
  against: Against | null,
  going: Going,
  stations: readonly StationSpan[],
): Promise<OtherRecord | null> {
  if (!against) return null;
  const record = await recordOf(ports, against.window, going, null);
  if (!record) throw noSamples(against.window, '--against', stations);
  const { fromMs, untilMs } = against.window;
  return { record, fromMs, untilMs, against: against.words };
}

/**
 * Reviews a stretch of a station's record.
 *
 * @throws `review/no-station`, `review/no-samples`, `review/since-after-until`, `review/against`; the problems of the
 *   instrument file, and what store and folder say.
 */
export async function reviewOfRecord(
  ports: ReadingPorts,
  request: Omit<ReviewRequest, 'out'>,
): Promise<Review> {
  const { instrument, station: wanted } = await logDesign(ports.files, request.path, request.station);
  const stations = await ports.store.stations();
  const span = stationOf(stations, wanted, request.station !== null);
  const window: SampleWindow = {
    station: span?.station ?? wanted,
    fromMs: request.sinceMs ?? (span?.firstMs ?? 1) - 1,
    untilMs: request.untilMs ?? span?.lastMs ?? 0,
  };
  const against = againstOf(request.against, window, stations);
  const isProblem = against !== null && 'code' in against;
  throwIfAny(
    [
      span ? null : noStation(wanted, '--station', stations),
      windowProblem(request),
      isProblem ? against : null,
    ].filter((problem) => problem !== null),
  );
  const { head } = await readDesign(ports.files, request.path);
  const going: Going = {
    choices: choicesOf(request, instrument),
    setting: faultSetting(instrument, head),
    lineIntervalMs: instrument.controller.lineIntervalMs,
  };
  const nearby = !isProblem && against && against.window.station !== window.station ? against.window : null;
  const record = await recordOf(ports, window, going, nearby);
  if (!record) throw noSamples(window, '--since, --until', stations);
  const other = await otherOf(ports, isProblem ? null : against, going, stations);
  return reviewOf(
    record,
    {
      name: instrument.name,
      station: window.station,
      fromMs: request.sinceMs ?? record.sum.firstMs - record.intervalMs,
      untilMs: window.untilMs,
      northSigmaDeg: instrument.site.northHistory.at(-1)?.sigmaDeg ?? null,
      hasCalibration: instrument.cups?.runPerPulseM !== null && instrument.cups !== null,
    },
    other,
  );
}

/** Reviews a stretch of a station's record and writes the report: page, sheet, pictures and tables. */
export async function reviewRecord(
  ports: ReviewPorts,
  request: ReviewRequest,
  stop: StopSign,
): Promise<Reviewed> {
  const review = await reviewOfRecord(ports, request);
  const written = await ports.output.write(request.out, await filesOf(ports.fonts, review), stop, 'result');
  return { review, reasons: shortReasons(review), written };
}
