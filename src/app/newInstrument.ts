import { INSTRUMENT_FILE_MOST_BYTES, startingFile } from '../core/instrument/index.ts';
import { VanewrightError } from '../core/error/index.ts';
import type { InstrumentFiles, OutputFolder, StopSign, Written } from '../ports/index.ts';

/** Name of the file that `new` writes. */
export const INSTRUMENT_FILE = 'instrument.yaml';

/** Name of an instrument from the last part of its folder's path. */
function nameFrom(folder: string): string {
  const last = folder
    .split(/[\\/]/)
    .filter((part) => part !== '' && part !== '.')
    .at(-1);
  return last && last !== '..' ? last : 'my vane';
}

/** Whether a path holds something already; only "not found" counts as free. */
async function isTaken(files: InstrumentFiles, path: string): Promise<boolean> {
  try {
    await files.readText(path, 1);
    return true;
  } catch (error) {
    return !(error instanceof VanewrightError && error.problems[0]?.code === 'files/not-found');
  }
}

/** Text of an example, without the line that tells an editor where its schema lies: it lies elsewhere from here. */
async function exampleText(files: InstrumentFiles, path: string): Promise<string> {
  const text = await files.readText(path, INSTRUMENT_FILE_MOST_BYTES);
  return text.replace(/^# yaml-language-server:.*\r?\n/m, '');
}

/**
 * Writes a commented instrument file to begin from; it proves clean as it is.
 *
 * @param example - Instrument file of an example to begin from; `null` for the plain vane.
 * @throws `files/already-there` when the folder holds an instrument file: a maker's work is never replaced.
 */
export async function newInstrument(
  files: InstrumentFiles,
  output: OutputFolder,
  folder: string,
  example: string | null,
  stop: StopSign,
): Promise<Written> {
  const path = `${folder.replace(/[\\/]+$/, '')}/${INSTRUMENT_FILE}`;
  if (await isTaken(files, path)) {
    throw new VanewrightError({
      code: 'files/already-there',
      what: 'The folder holds an instrument file already; it was left as it is.',
      where: path,
      got: 'a file',
      allowed: 'a folder without an instrument file',
      fix: 'Name another folder, or edit the file that is there.',
    });
  }
  const content = example === null ? startingFile(nameFrom(folder)) : await exampleText(files, example);
  const file = { path: INSTRUMENT_FILE, content };
  return output.write(folder, [file], stop, 'addition');
}
