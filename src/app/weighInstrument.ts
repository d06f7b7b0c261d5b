import { VanewrightError } from '../core/error/index.ts';
import { recordingText } from '../core/fit/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument, type Instrument } from '../core/instrument/index.ts';
import {
  checkedSeries,
  modelledWind,
  purposeAdvice,
  recordedWind,
  weighPrinciples,
  type PurposeAdvice,
  type Weighing,
  type WindView,
} from '../core/weigh/index.ts';
import type { InstrumentFiles } from '../ports/index.ts';
import { dataColumns, TIME } from './fit/dataColumns.ts';

/** A year of minutes is well below this. [bytes] */
const SERIES_MOST_BYTES = 64 * 1024 * 1024;

/** Swing of the wind where no file states it: the default of `site.wind.swingDeg`. [deg] */
const USUAL_SWING_DEG = 15;

/** What to weigh. */
export interface WeighRequest {
  /** Instrument file; `null` where only a purpose is asked about. */
  readonly path: string | null;
  /** File of recorded wind directions, `time,heading_deg`; `null` takes the model of `site.wind`. */
  readonly wind: string | null;
  /** What the readings are for; `null` where the file says it all. */
  readonly purpose: string | null;
}

/** Ten ways of sensing for the need of a file, and what a purpose asks for. */
export interface WeighedNeed {
  /** `null` without an instrument file. */
  readonly name: string | null;
  readonly purpose: PurposeAdvice | null;
  /** `null` without an instrument file. */
  readonly weighing: Weighing | null;
  /** Lines of the recorded wind that are no row of numbers, left out. [1 = first line] */
  readonly leftOut: readonly number[];
}

async function windOf(
  files: InstrumentFiles,
  { site }: Instrument,
  wind: string | null,
): Promise<{ readonly view: WindView; readonly leftOut: readonly number[] }> {
  if (wind === null) return { view: modelledWind(site.wind), leftOut: [] };
  const text = recordingText(await files.readBytes(wind, SERIES_MOST_BYTES));
  const { rows, leftOut } = dataColumns(text, wind, [TIME, 'heading_deg']);
  const series = checkedSeries(
    rows.map(([atMs, headingDeg]) => ({ atMs: atMs!, headingDeg: headingDeg! })),
    wind,
  );
  return { view: recordedWind(series, site.wind), leftOut };
}

/**
 * Which way of sensing serves a need, and what a purpose asks for. The file's disc need not be one that can be made.
 *
 * @throws `weigh/nothing-asked` without file and purpose; whatever is wrong with the file or the recorded wind.
 */
export async function weighInstrument(
  files: InstrumentFiles,
  { path, wind, purpose }: WeighRequest,
): Promise<WeighedNeed> {
  if (path === null) {
    if (purpose === null) throw nothingAsked();
    return { name: null, purpose: purposeAdvice(purpose, USUAL_SWING_DEG), weighing: null, leftOut: [] };
  }
  const { instrument } = readInstrument(await files.readText(path, INSTRUMENT_FILE_MOST_BYTES), path);
  const advice = purpose === null ? null : purposeAdvice(purpose, instrument.site.wind.swingDeg);
  const { view, leftOut } = await windOf(files, instrument, wind);
  return { name: instrument.name, purpose: advice, weighing: weighPrinciples(instrument, view), leftOut };
}

function nothingAsked(): VanewrightError {
  return new VanewrightError({
    code: 'weigh/nothing-asked',
    what: 'There is neither a need to weigh nor a purpose to begin from.',
    where: 'command line',
    got: 'no instrument file and no --purpose',
    allowed: 'an instrument file, --purpose, or both',
    fix: 'Run: vanewright weigh --purpose garden',
  });
}
