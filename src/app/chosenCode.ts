import { buildCode, OWN_WORDS, readCodeCsv, readCodeJson, type CodeTable } from '../core/codes/index.ts';
import { VanewrightError } from '../core/error/index.ts';
import type { Instrument } from '../core/instrument/index.ts';
import type { InstrumentFiles } from '../ports/index.ts';

/** A file of words is short; the reader of codes has its own, lower limit. [bytes] */
const CODE_FILE_MOST_BYTES = 1 << 20;

/** Path of a file named in another file: beside that one unless it is absolute. */
function besides(path: string, named: string): string {
  if (/^([/\\]|[A-Za-z]:)/.test(named)) return named;
  const cut = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1;
  return path.slice(0, cut) + named;
}

/** The maker's own words, read from their file. */
async function ownCode(files: InstrumentFiles, path: string, { need, disc }: Instrument): Promise<CodeTable> {
  const file = besides(path, disc.codeFile ?? '');
  const text = await files.readText(file, CODE_FILE_MOST_BYTES);
  const table = /^\s*[{[]/.test(text) ? readCodeJson(text, file) : readCodeCsv(text, file);
  if (table.positions === need.positions) return table;
  throw new VanewrightError({
    code: 'codes/count-differs',
    what: 'The file of words has another count than the instrument asks for.',
    where: 'need.positions',
    got: `${table.positions} words in ${file}, ${need.positions} positions`,
    allowed: 'as many words as positions',
    fix: `Set need.positions to ${table.positions}, or give ${need.positions} words.`,
  });
}

/**
 * The code an instrument asks for: built by its family, or read from the maker's own file.
 *
 * @param path - Path of the instrument file; `disc.codeFile` is found from there.
 * @throws the codes step's problems, `codes/count-differs`, or those of reading the file.
 */
export async function chosenCode(
  files: InstrumentFiles,
  path: string,
  instrument: Instrument,
): Promise<CodeTable> {
  const { need, disc } = instrument;
  if (disc.code === OWN_WORDS) return ownCode(files, path, instrument);
  return buildCode(disc.code, need.positions, disc.codeOptions);
}
