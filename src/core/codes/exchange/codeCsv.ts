import { throwIfAny, type Problem } from '../../error/index.ts';
import { showNumber } from '../../units/index.ts';
import type { CodeTable } from '../codeTable.ts';
import { listed, sizeProblems, tableOfWords, wordProblems, type PlacedWord } from './wordList.ts';

/** Columns that a code file may have, in any order; all but `word` may be left out. */
const COLUMNS = ['position', 'fromDeg', 'toDeg', 'word'] as const;

/** Digits of an angle in the file: a thousandth of a step of the finest disc. */
const ANGLE_PLACES = 6;

/**
 * A code table as comma-separated lines: position, where it begins and ends, and its word.
 *
 * @returns Text with a heading line, each line ended by a newline.
 * @check src/core/codes/exchange/exchange.test.ts
 */
export function codeCsv({ words, positions }: CodeTable): string {
  const angle = (steps: number): string => showNumber((steps * 360) / positions, ANGLE_PLACES);
  const rows = words.map((word, k) => [k, angle(k), angle(k + 1), word].join(','));
  return [COLUMNS.join(','), ...rows, ''].join('\n');
}

/** One line that is not empty, cut into fields without quotes and blanks. */
interface Row {
  readonly fields: readonly string[];
  readonly where: string;
}

function rowsOf(text: string, file: string): Row[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const separator = [';', '\t', ','].find((sign) => lines[0]!.includes(sign)) ?? ',';
  return lines.flatMap((line, i) => {
    if (line.trim() === '') return [];
    const fields = line.split(separator).map((field) => field.trim().replace(/^"(.*)"$/, '$1'));
    return [{ fields, where: `${file}:${i + 1}` }];
  });
}

/** Where each column stands; a list without heading has words alone. */
function columnsOf(rows: readonly Row[]): { readonly body: readonly Row[]; readonly heading: Row | null } {
  const [first, ...rest] = rows;
  const isHeading = first?.fields.some((field) => /[A-Za-z]/.test(field)) ?? false;
  return isHeading ? { body: rest, heading: first! } : { body: rows, heading: null };
}

function headingProblems({ fields, where }: Row): Problem[] {
  const about = { where, got: fields.join(', ').slice(0, 80), allowed: COLUMNS.join(', ') };
  const unknown = fields.filter((field) => !(COLUMNS as readonly string[]).includes(field));
  if (unknown.length > 0) {
    const what = 'The heading of a code file names a column that is not known.';
    return [{ code: 'codes/column-unknown', what, ...about, fix: `Remove the column ${unknown[0]}.` }];
  }
  if (fields.includes('word')) return [];
  const what = 'The heading of a code file names no column of words.';
  return [{ code: 'codes/column-missing', what, ...about, fix: 'Name the column of words `word`.' }];
}

/** Rows whose position is not their place in the file. */
function orderProblems(rows: readonly Row[], column: number): Problem[] {
  return rows.flatMap(({ fields, where }, k) =>
    column === -1 || fields[column] === String(k)
      ? []
      : [
          {
            code: 'codes/position-out-of-order',
            what: 'The positions of a code file do not count up from 0 without a gap.',
            where,
            got: `position ${fields[column] ?? 'missing'}`,
            allowed: `position ${k}`,
            fix: 'Sort the file by position, and add the lines that are missing.',
          },
        ],
  );
}

/**
 * A maker's own code from comma-, semicolon- or tab-separated lines, or from one word a line.
 *
 * Angles in the file are not read: positions are equal steps. Every digit becomes a track of its own.
 *
 * @param file - Name shown in problems.
 * @throws `codes/file-too-large`, `codes/column-unknown`, `codes/column-missing`, `codes/position-out-of-order`, `codes/count-out-of-range`,
 *   `codes/word-not-levels`, `codes/word-length`, `codes/word-repeats`, `codes/channel-never-changes`, each with its line.
 * @check src/core/codes/exchange/exchange.test.ts
 */
export function readCodeCsv(text: string, file: string): CodeTable {
  throwIfAny(sizeProblems(text, file));
  const { body, heading } = columnsOf(rowsOf(text, file));
  throwIfAny(heading ? headingProblems(heading) : []);
  const wordColumn = heading ? heading.fields.indexOf('word') : 0;
  const positionColumn = heading ? heading.fields.indexOf('position') : -1;
  const words: PlacedWord[] = body.map(({ fields, where }) => ({ word: fields[wordColumn] ?? '', where }));
  throwIfAny(listed([...orderProblems(body, positionColumn), ...wordProblems(words, file)]));
  return tableOfWords(words.map(({ word }) => word));
}
