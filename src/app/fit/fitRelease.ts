import { throwIfAny } from '../../core/error/index.ts';
import {
  recordingText,
  releaseTest,
  spinDown,
  type ReleaseTest,
  type SpinDown,
} from '../../core/fit/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument } from '../../core/instrument/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';
import { dataColumns, TIME } from './dataColumns.ts';

/** Ten minutes at 50 readings a second are well below this. [bytes] */
const SWING_MOST_BYTES = 16 * 1024 * 1024;

/** What was recorded of a release, and of cups spinning down. */
export interface ReleaseRequest {
  readonly path: string;
  /** File of headings from holding to rest; `null` for none. */
  readonly swing: string | null;
  /** Speed of the stream during the swing; `null` when not told. [m/s] */
  readonly speedMPerS: number | null;
  /** Smallest change that the headings can show; `null` takes the step. [deg] */
  readonly resolutionDeg: number | null;
  /** File of the moments of pulses while the cups spun down; `null` for none. */
  readonly spinDown: string | null;
}

/** How vane and cups moved when they were let go. */
export interface FittedRelease {
  readonly name: string;
  readonly release: ReleaseTest | null;
  readonly resolutionDeg: number;
  readonly spinDown: SpinDown | null;
  /** Damping between 0.3 and 0.7, a damped wavelength below 10 m and a delay distance of at most 5 m. */
  readonly isWithin: boolean;
  /** Lines of files that are no rows of numbers, left out. */
  readonly leftOut: readonly { readonly file: string; readonly lines: readonly number[] }[];
}

function check({ swing, speedMPerS, spinDown: cups }: ReleaseRequest): void {
  const where = 'command line';
  if (swing === null && cups === null) {
    throwIfAny([
      {
        code: 'fit/nothing-let-go',
        what: 'There is no recording of a vane or of cups let go.',
        where,
        got: 'neither --swing nor --spin-down',
        allowed: 'one of them, or both',
        fix: 'Add --swing swing.csv --speed-m-per-s 5 for the vane, or --spin-down pulses.csv for the cups.',
      },
    ]);
  }
  if (swing !== null && speedMPerS === null) {
    throwIfAny([
      {
        code: 'fit/stream-not-told',
        what: 'Wavelengths are times multiplied by the speed of the stream, and that is not told.',
        where,
        got: '--swing without --speed-m-per-s',
        allowed: 'both',
        fix: 'Add the speed of the stream in m/s, such as --speed-m-per-s 5.',
      },
    ]);
  }
}

/**
 * Damping of the vane from a release test and wear of the cups' bearing from a spin-down.
 *
 * @throws VanewrightError when the recordings do not show it.
 */
export async function fitRelease(files: InstrumentFiles, request: ReleaseRequest): Promise<FittedRelease> {
  check(request);
  const { path, swing, speedMPerS, spinDown: cups } = request;
  const { instrument } = readInstrument(await files.readText(path, INSTRUMENT_FILE_MOST_BYTES), path);
  const resolutionDeg = request.resolutionDeg ?? 360 / instrument.need.positions;
  const leftOut: { file: string; lines: readonly number[] }[] = [];
  const rowsOf = async (file: string, wanted: readonly string[]) => {
    const found = dataColumns(recordingText(await files.readBytes(file, SWING_MOST_BYTES)), file, wanted);
    if (found.leftOut.length > 0) leftOut.push({ file, lines: found.leftOut });
    return found.rows;
  };
  const release =
    swing === null
      ? null
      : releaseTest(
          (await rowsOf(swing, [TIME, 'heading_deg'])).map(([ms, deg]) => ({
            timeS: ms! / 1000,
            headingDeg: deg!,
          })),
          speedMPerS!,
          resolutionDeg,
        );
  const spun = cups === null ? null : spinDown((await rowsOf(cups, [TIME])).map(([ms]) => ms! / 1000));
  const reaches = release?.motion.reaches;
  const isWithin =
    !reaches || (reaches.dampingElsewhere && reaches.dampedWavelength && reaches.delayDistance);
  return { name: instrument.name, release, resolutionDeg, spinDown: spun, isWithin, leftOut };
}
