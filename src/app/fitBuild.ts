import {
  certificateOf,
  certificatePage,
  fitRecording,
  readRecording,
  recordingText,
  type Certificate,
  type Fit,
  type ReadingHints,
} from '../core/fit/index.ts';
import { applyAsBuilt, INSTRUMENT_FILE_MOST_BYTES } from '../core/instrument/index.ts';
import { figuresPdf } from '../core/make/index.ts';
import { programFiles } from '../core/program/index.ts';
import type { Fonts, InstrumentFiles, OutputFile, OutputFolder, StopSign, Written } from '../ports/index.ts';
import { inPlace, readDesign } from './design.ts';
import { certificateFigures } from './fit/certificateFigures.ts';

/** A minute at 200 rows a second is well below this. [bytes] */
const RECORDING_MOST_BYTES = 64 * 1024 * 1024;

/** What to fit, and what to do with it. */
export interface FitRequest {
  readonly path: string;
  readonly recordings: readonly string[];
  readonly hints: ReadingHints;
  /** Disc angle at the first row; `null` where nobody knows. [deg] */
  readonly startsAtDeg: number | null;
  /** Put wiring, thresholds and table into the instrument file. */
  readonly write: boolean;
  /** Folder for the certificate and the renewed program; `null` for none. */
  readonly out: string | null;
}

/** What a recorded turn told, and what was written of it. */
export interface FittedBuild {
  readonly fit: Fit;
  readonly certificate: Certificate;
  /** Whether the instrument file holds the table now. */
  readonly isWritten: boolean;
  readonly written: Written | null;
}

/** What `fit` needs of the world. */
export interface FitPorts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
  readonly fonts: Fonts;
}

/** The recordings as text, whatever their encoding; the youngest tells when the turn was made. */
async function recordingsOf(files: InstrumentFiles, paths: readonly string[]) {
  const read = await Promise.all(
    paths.map(async (path) => ({
      name: path,
      text: recordingText(await files.readBytes(path, RECORDING_MOST_BYTES)),
      changedAt: await files.changedAt(path),
    })),
  );
  const recordedAt =
    read
      .map(({ changedAt }) => changedAt)
      .sort()
      .at(-1) ?? '';
  return { texts: read.map(({ name, text }) => ({ name, text })), recordedAt };
}

/** The certificate for the screen and for paper. */
async function certificateFiles(fonts: Fonts, certificate: Certificate, fit: Fit): Promise<OutputFile[]> {
  const setting = { paper: 'a4', font: await fonts.sans() } as const;
  return [
    { path: 'certificate.json', content: `${JSON.stringify(certificate, null, 2)}\n` },
    { path: 'certificate.html', content: certificatePage(certificate, fit) },
    { path: 'certificate.pdf', content: await figuresPdf(certificateFigures(certificate, fit), setting) },
  ];
}

/**
 * What is wrong with a finished build, and how to read it: from one turn by hand.
 *
 * With `write`, the instrument file gets the table, its comments kept; with `out`, a certificate and the renewed program
 * are written. Where nothing safe can be said, neither the file nor the program changes.
 *
 * @throws VanewrightError when the recording or the instrument file cannot be used.
 */
export async function fitBuild(ports: FitPorts, request: FitRequest, stop: StopSign): Promise<FittedBuild> {
  const { files, output } = ports;
  const { instrument, disc, head, placed } = await readDesign(files, request.path);
  const { texts, recordedAt } = await recordingsOf(files, request.recordings);
  const hints: ReadingHints = {
    channels: disc.code.channels.length,
    scaleCounts: 2 ** head.board.converterBits,
    supplyV: head.board.supplyV,
    ...request.hints,
  };
  const fit = await inPlace(placed, () =>
    fitRecording(instrument, disc, head, readRecording(texts, hints), {
      recordedAt,
      startsAtDeg: request.startsAtDeg,
    }),
  );
  const certificate = certificateOf(fit, instrument);
  const isWritten = request.write && fit.asBuilt !== null;
  const made = request.out === null ? [] : await certificateFiles(ports.fonts, certificate, fit);
  if (fit.asBuilt !== null && request.out !== null) {
    const renewed = programFiles({ ...instrument, asBuilt: fit.asBuilt }, head);
    made.push(...renewed.map(({ path, content }) => ({ path: `program/${path}`, content })));
  }
  if (request.write && fit.asBuilt !== null) {
    const text = await files.readText(request.path, INSTRUMENT_FILE_MOST_BYTES);
    await files.replaceText(request.path, applyAsBuilt(text, request.path, fit.asBuilt));
  }
  const written = request.out === null ? null : await output.write(request.out, made, stop, 'part');
  return { fit, certificate, isWritten, written };
}
