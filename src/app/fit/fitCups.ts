import { throwIfAny, VanewrightError, type Problem } from '../../core/error/index.ts';
import {
  blocksOf,
  bounceOf,
  carRun,
  edgeGaps,
  fittedCups,
  pulsesPerTurn,
  recordingText,
  residualPlot,
  trackFromPositions,
  type Bounce,
  type CarRun,
  type FittedCups,
  type PulsesPerTurn,
  type TimedValue,
  type TrackPoint,
} from '../../core/fit/index.ts';
import { applyFields, INSTRUMENT_FILE_MOST_BYTES, readInstrument } from '../../core/instrument/index.ts';
import { cupFactor, type CupCalibration } from '../../core/wind/index.ts';
import type { InstrumentFiles, OutputFolder, StopSign, Written } from '../../ports/index.ts';
import { dataColumns, TIME } from './dataColumns.ts';

/** A day at ten edges a second is well below this. [bytes] */
const SERIES_MOST_BYTES = 64 * 1024 * 1024;

/** What was recorded of the cups, and what to do with it. */
export interface CupsRequest {
  readonly path: string;
  /** File of the moments of all edges; `null` for none. */
  readonly edges: string | null;
  /** Turns of the cups by hand while edges or pulses were counted; `null` when nobody counted. [-] */
  readonly turns: number | null;
  /** Pulses that the instrument counted in those turns; `null` to count them in the edges. [-] */
  readonly pulses: number | null;
  /** File of the running count of the pulses; `null` for none. */
  readonly count: string | null;
  /** File of a reference's speed by the same clock; `null` for none. */
  readonly reference: string | null;
  /** File of a car's track by its own clock; `null` for none. */
  readonly track: string | null;
  /** Length of the blocks whose means are compared. [s] */
  readonly blockS: number;
  readonly write: boolean;
  readonly out: string | null;
}

/** Fields of the section `cups` that were found; those not found are left out. */
export interface CupsFields {
  readonly pulsesPerTurn?: number;
  readonly quietUs?: number;
  readonly runPerPulseM?: number;
  readonly startSpeedMPerS?: number;
}

/** The line speed = offset + path · rate, with standard errors. */
export interface CupsLine {
  readonly calibration: CupCalibration;
  readonly offsetErrorMPerS: number;
  readonly pathErrorM: number;
  /** Beside a reference; `null` for a car run. */
  readonly beside: FittedCups | null;
  /** With a car; `null` beside a reference. */
  readonly car: CarRun | null;
  /** Wind speed over the speed of the cups' middles; a wrong number of pulses shows here. [-] */
  readonly cupFactor: number;
}

/** What was found of the cups, and what was written of it. */
export interface FittedCupsBuild {
  readonly name: string;
  readonly bounce: Bounce | null;
  readonly turn: (PulsesPerTurn & { readonly pulses: number; readonly turns: number }) | null;
  readonly line: CupsLine | null;
  readonly fields: CupsFields;
  /** Lines of files that are no rows of numbers, left out. */
  readonly leftOut: readonly { readonly file: string; readonly lines: readonly number[] }[];
  readonly isWritten: boolean;
  readonly written: Written | null;
}

/** What a set of words lacks, all at once. */
function missing({ edges, turns, pulses, count, reference, track }: CupsRequest): Problem[] {
  const has = { edges, turns, pulses, count, reference, track };
  const problems: Problem[] = [];
  const add = (what: string, got: string, allowed: string, fix: string): void =>
    void problems.push({ code: 'fit/cups-words', what, where: 'command line', got, allowed, fix });
  const given = Object.entries(has)
    .filter(([, value]) => value !== null)
    .map(([name]) => `--${name}`);
  const got = given.join(', ') || 'none of them';
  if (edges === null && turns === null && count === null && pulses === null && !reference && !track) {
    const all = '--edges, --turns with --pulses, --count with --reference or --track';
    add(
      'There is nothing to fit the cups by.',
      got,
      all,
      'Turn the cups by hand 10 times and add --turns 10 --pulses 20.',
    );
    return problems;
  }
  if ((pulses !== null && turns === null) || (turns !== null && pulses === null && edges === null)) {
    add(
      'Pulses a turn need both turns and pulses.',
      got,
      '--turns with --pulses or --edges',
      'Add --turns 10 --pulses 20.',
    );
  }
  const others = [reference, track].filter((file) => file !== null).length;
  if (count === null ? others > 0 : others !== 1) {
    const fix = 'Add --count count.csv --reference reference.csv.';
    add(
      'A line needs the count of the pulses and one thing to compare it with.',
      got,
      '--count with --reference or with --track',
      fix,
    );
  }
  return problems;
}

/** Reads the files of one request and keeps what was left out of each. */
class SeriesReader {
  readonly leftOut: { file: string; lines: readonly number[] }[] = [];
  readonly #files: InstrumentFiles;

  constructor(files: InstrumentFiles) {
    this.#files = files;
  }

  async columns(path: string, ...wanted: readonly (readonly string[])[]) {
    const text = recordingText(await this.#files.readBytes(path, SERIES_MOST_BYTES));
    const found = dataColumns(text, path, ...wanted);
    if (found.leftOut.length > 0) this.leftOut.push({ file: path, lines: found.leftOut });
    return found;
  }

  async series(path: string, value: string): Promise<TimedValue[]> {
    const { rows } = await this.columns(path, [TIME, value]);
    return rows
      .map(([timeMs, one]) => ({ timeMs: timeMs!, value: one! }))
      .sort((a, b) => a.timeMs - b.timeMs);
  }

  /** Track of a car, by positions alone or by speed and course. */
  async track(path: string): Promise<TrackPoint[]> {
    const moving = [TIME, 'speed_m_s', 'course_deg'];
    const { rows, headings } = await this.columns(path, moving, [TIME, 'latitude_deg', 'longitude_deg']);
    if (headings.includes('course_deg')) {
      return rows.map(([timeMs, speed, course]) => ({
        timeMs: timeMs!,
        speedMPerS: speed!,
        courseDeg: course!,
      }));
    }
    return trackFromPositions(
      rows.map(([timeMs, north, east]) => ({ timeMs: timeMs!, latitudeDeg: north!, longitudeDeg: east! })),
    );
  }
}

/** Pulses in a row of edges: the contact opens and closes once each, a settled edge ending a quiet time. [-] */
function pulsesIn(edgesUs: readonly number[], quietUs: number): number {
  return Math.round((1 + edgeGaps(edgesUs).filter((gap) => gap > quietUs).length) / 2);
}

async function lineOf(read: SeriesReader, request: CupsRequest): Promise<Omit<CupsLine, 'cupFactor'> | null> {
  const { count, reference, track, blockS } = request;
  if (count === null) return null;
  const pulses = await read.series(count, 'pulses');
  if (track !== null) {
    const car = carRun(pulses, await read.track(track));
    const { interceptError, slopeError } = car.calibration.line;
    return {
      calibration: car.calibration,
      offsetErrorMPerS: interceptError,
      pathErrorM: slopeError,
      beside: null,
      car,
    };
  }
  const beside = fittedCups(blocksOf(pulses, await read.series(reference!, 'speed_m_s'), blockS * 1000));
  const { calibration, offsetErrorMPerS, pathErrorM } = beside;
  return { calibration, offsetErrorMPerS, pathErrorM, beside, car: null };
}

function fieldsOf({ bounce, turn, line }: Pick<FittedCupsBuild, 'bounce' | 'turn' | 'line'>): CupsFields {
  return {
    ...(turn ? { pulsesPerTurn: turn.pulsesPerTurn } : {}),
    ...(bounce ? { quietUs: bounce.quietUs } : {}),
    ...(line
      ? {
          runPerPulseM: Number(line.calibration.pathPerPulseM.toFixed(4)),
          startSpeedMPerS: Number(line.calibration.offsetMPerS.toFixed(3)),
        }
      : {}),
  };
}

function offsetBelowZero({ calibration, offsetErrorMPerS }: CupsLine): VanewrightError {
  return new VanewrightError({
    code: 'fit/offset-below-zero',
    what: 'The line gives wind below zero at no pulses, which no cups do: it is not written.',
    where: 'cups.startSpeedMPerS',
    got: `${calibration.offsetMPerS.toFixed(2)} ± ${offsetErrorMPerS.toFixed(2)} m/s`,
    allowed: '0 m/s or more',
    fix: 'Record more low speeds, 2 to 5 m/s, and look in the picture of --out for a bend at the low end.',
  });
}

function residualFile({ calibration, beside, car }: CupsLine) {
  const rates = (beside?.blocks ?? car?.legs ?? []).map(({ rateHz }) => rateHz);
  return { path: 'residuals.svg', content: `${residualPlot(calibration, rates).html}\n` };
}

/**
 * What the cups are, from turning them by hand, from their edges, and from wind that something else measured too.
 *
 * @throws VanewrightError when the data cannot support an answer; nothing is written then.
 */
export async function fitCups(
  { files, output }: { readonly files: InstrumentFiles; readonly output: OutputFolder },
  request: CupsRequest,
  stop: StopSign,
): Promise<FittedCupsBuild> {
  const { path, turns, write, out } = request;
  throwIfAny(missing(request));
  const text = await files.readText(path, INSTRUMENT_FILE_MOST_BYTES);
  const { instrument } = readInstrument(text, path);
  const read = new SeriesReader(files);
  const edgesUs =
    request.edges === null ? null : (await read.columns(request.edges, ['edge_us'])).rows.map(([us]) => us!);
  const bounce = edgesUs && bounceOf(edgesUs);
  const pulses = request.pulses ?? (edgesUs && bounce ? pulsesIn(edgesUs, bounce.quietUs) : null);
  const turn =
    turns === null || pulses === null
      ? null
      : { ...pulsesPerTurn(pulses, turns, edgesUs?.length ?? null), pulses, turns };
  const found = await lineOf(read, request);
  const line = found && {
    ...found,
    cupFactor: cupFactor({
      pathPerPulseM: found.calibration.pathPerPulseM,
      pulsesPerTurn: turn?.pulsesPerTurn ?? instrument.cups?.pulsesPerTurn ?? 1,
      radiusMm: instrument.parts.cups.radiusMm,
    }),
  };
  const fields = fieldsOf({ bounce, turn, line });
  if (write && line && line.calibration.offsetMPerS < 0) throw offsetBelowZero(line);
  const edited = write
    ? applyFields(text, path, { section: 'cups', set: { ...fields } as Record<string, number>, append: null })
    : null;
  const pictures = line ? [residualFile(line)] : [];
  const written =
    out === null || pictures.length === 0 ? null : await output.write(out, pictures, stop, 'part');
  if (edited !== null) await files.replaceText(path, edited);
  return {
    name: instrument.name,
    bounce,
    turn,
    line,
    fields,
    leftOut: read.leftOut,
    isWritten: edited !== null,
    written,
  };
}
