import { VanewrightError, throwIfAny, type Problem } from '../core/error/index.ts';
import type { Instrument } from '../core/instrument/index.ts';
import { csvText } from '../core/report/index.ts';
import {
  readingWidths,
  RecordSum,
  reviewOf,
  reviewPage,
  reviewPictures,
  reviewTables,
  sampleIntervalMs,
  type OtherRecord,
  type Review,
  type ReviewChoices,
} from '../core/review/index.ts';
import { calmThreshold, type EqualWeight } from '../core/wind/index.ts';
import type {
  Fonts,
  InstrumentFiles,
  OutputFile,
  OutputFolder,
  SampleStore,
  SampleWindow,
  StationSpan,
  StopSign,
  Written,
} from '../ports/index.ts';
import { logDesign } from './logSources.ts';
import { reviewPdf } from './reviewPdf.ts';
import { periodOfWords } from './reviewPeriod.ts';

/** What to review, and how. */
export interface ReviewRequest {
  /** Path of the instrument file. */
  readonly path: string;
  /** `null` takes the instrument's own, or the only one of the store. */
  readonly station: string | null;
  /** Not included, as it ends the time before; `null` for the beginning. [ms UTC] */
  readonly sinceMs: number | null;
  /** Included; `null` for the end. [ms UTC] */
  readonly untilMs: number | null;
  /** A station, or a period such as `2026-03` or `2026-01-01/2026-02-01`; `null` for nothing. */
  readonly against: string | null;
  /** Sectors of the rose. [-] */
  readonly sectors: number;
  readonly equalWeight: EqualWeight;
  /** Local time less UTC, for hours of the day and months. [min] */
  readonly utcOffsetMin: number;
  /** Calm threshold; `null` takes what cups and vane need to start. [m/s] */
  readonly calmBelowMPerS: number | null;
  readonly out: string;
}

/** What a review needs of the world. */
export interface ReviewPorts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
  readonly fonts: Fonts;
  readonly store: SampleStore;
  /** Hears how much of the record was read. [-], 0..1 */
  readonly onProgress?: (share: number) => void;
}

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

const dayText = (atMs: number): string => new Date(atMs).toISOString().slice(0, 16).replace('T', ' ');

const listed = (stations: readonly StationSpan[]): string =>
  stations
    .map(({ station, firstMs, lastMs }) => `${station} (${dayText(firstMs)} to ${dayText(lastMs)} UTC)`)
    .join(', ') || 'none';

function noStation(got: string, where: string, stations: readonly StationSpan[]): Problem {
  const [first] = stations;
  return {
    code: 'review/no-station',
    what: first ? 'The store has no such station.' : 'The store holds no samples yet.',
    where,
    got,
    allowed: `one of: ${listed(stations)}`,
    fix: first
      ? `Use ${where} "${first.station}".`
      : 'Fill it with: vanewright log FILE --from SOURCE --store STORE',
  };
}

/** Station that is meant, among those of the store. */
function stationOf(stations: readonly StationSpan[], wanted: string, isSaid: boolean): StationSpan | null {
  const found = stations.find(({ station }) => station === wanted);
  return found ?? (!isSaid && stations.length === 1 ? stations[0]! : null);
}

/** Samples after the start of a window and up to its end, gone through once. */
async function recordOf(
  { store, onProgress }: ReviewPorts,
  window: SampleWindow,
  choices: ReviewChoices,
  lineIntervalMs: number,
): Promise<RecordSum | null> {
  let record: RecordSum | null = null;
  // A period includes its end and not its start: a sample at midnight belongs to the day that ends there.
  const { station, fromMs, untilMs } = window;
  for await (const columns of store.columns({ station, fromMs: fromMs + 1, untilMs: untilMs + 1 })) {
    record ??= new RecordSum(choices, sampleIntervalMs(columns.atMs) ?? lineIntervalMs);
    record.addColumns(columns);
    onProgress?.((columns.atMs.at(-1)! - fromMs) / (untilMs - fromMs));
  }
  record?.end();
  return record;
}

function noSamples(window: SampleWindow, where: string, stations: readonly StationSpan[]): VanewrightError {
  const own = stations.filter(({ station }) => station === window.station);
  return new VanewrightError({
    code: 'review/no-samples',
    what: 'The store holds no sample of that time.',
    where,
    got: `${window.station}: 0 samples from ${dayText(window.fromMs)} to ${dayText(window.untilMs)} UTC`,
    allowed: `a time within: ${listed(own)}`,
    fix: `Use --since ${dayText(own[0]!.firstMs).slice(0, 10)}, or leave --since and --until out.`,
  });
}

function choicesOf(request: ReviewRequest, instrument: Instrument): ReviewChoices {
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

/** Window of what a review is compared with, and its words. */
interface Against {
  readonly window: SampleWindow;
  readonly words: string;
}

function againstOf(
  against: string | null,
  window: SampleWindow,
  stations: readonly StationSpan[],
): Against | Problem | null {
  if (against === null) return null;
  if (stations.some(({ station }) => station === against)) {
    return { window: { ...window, station: against }, words: `station ${against}` };
  }
  const period = periodOfWords(against);
  if (period) return { window: { ...window, ...period }, words: against };
  return {
    code: 'review/against',
    what: 'What to compare with is neither a station of the store nor a period.',
    where: '--against',
    got: against,
    allowed: `a period such as 2026, 2026-03, 2026-03-01 or 2026-03-01/2026-04-01, or one of: ${listed(stations)}`,
    fix: 'Use --against 2026-03',
  };
}

function windowProblem({ sinceMs, untilMs }: ReviewRequest): Problem | null {
  if (sinceMs === null || untilMs === null || sinceMs < untilMs) return null;
  return {
    code: 'review/since-after-until',
    what: 'The time to review ends before it begins.',
    where: '--since, --until',
    got: `since ${dayText(sinceMs)}, until ${dayText(untilMs)} UTC`,
    allowed: '--since earlier than --until',
    fix: `Use --since ${dayText(untilMs).slice(0, 10)} --until ${dayText(sinceMs + 86_400_000).slice(0, 10)}`,
  };
}

/** Why the data falls short, in sentences. */
function reasonsOf({ coverage, distribution }: Review): string[] {
  const { both, heading } = coverage.whole;
  const share = distribution ? both : heading;
  const what = distribution ? 'speed and direction' : 'direction';
  return share >= COVERED
    ? []
    : [`Only ${(100 * share).toFixed(1)} % of the time has ${what}; ${100 * COVERED} % are asked for.`];
}

async function filesOf(fonts: Fonts, review: Review): Promise<OutputFile[]> {
  return [
    { path: 'review.html', content: reviewPage(review) },
    { path: 'review.pdf', content: await reviewPdf(fonts, review) },
    ...reviewPictures(review).map(({ name, drawing }) => ({
      path: `pictures/${name}.svg`,
      content: `${drawing.html}\n`,
    })),
    ...reviewTables(review).map(({ name, headings, rows }) => ({
      path: `tables/${name}.csv`,
      content: csvText(headings, rows),
    })),
  ];
}

/** The other record, gone through; `null` without a comparison. */
async function otherOf(
  ports: ReviewPorts,
  against: Against | null,
  choices: ReviewChoices,
  known: { readonly lineIntervalMs: number; readonly stations: readonly StationSpan[] },
): Promise<OtherRecord | null> {
  if (!against) return null;
  const record = await recordOf(ports, against.window, choices, known.lineIntervalMs);
  if (!record) throw noSamples(against.window, '--against', known.stations);
  const { fromMs, untilMs } = against.window;
  return { record, fromMs, untilMs, against: against.words };
}

/**
 * Reviews a stretch of a station's record and writes the report: page, sheet, pictures and tables.
 *
 * @throws `review/no-station`, `review/no-samples`, `review/since-after-until`, `review/against`; the problems of the
 *   instrument file, and what store and folder say.
 */
export async function reviewRecord(
  ports: ReviewPorts,
  request: ReviewRequest,
  stop: StopSign,
): Promise<Reviewed> {
  const { instrument, station: wanted } = await logDesign(ports.files, request.path, request.station);
  const stations = await ports.store.stations();
  const span = stationOf(stations, wanted, request.station !== null);
  const lineIntervalMs = instrument.controller.lineIntervalMs;
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
  const choices = choicesOf(request, instrument);
  const record = await recordOf(ports, window, choices, lineIntervalMs);
  if (!record) throw noSamples(window, '--since, --until', stations);
  const other = await otherOf(ports, isProblem ? null : against, choices, { lineIntervalMs, stations });
  const review = reviewOf(
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
  const written = await ports.output.write(request.out, await filesOf(ports.fonts, review), stop, 'result');
  return { review, reasons: reasonsOf(review), written };
}
