import { throwIfAny, type Problem } from '../../error/index.ts';
import { columnRows } from './columnRows.ts';
import { areJson, jsonRows } from './jsonRows.ts';
import { areOurLines, ourRows } from './ourLines.ts';
import type { RawFile } from './rawRows.ts';
import type { ReadingHints, Recording, RecordingFile, Repair } from './recording.ts';
import { separationOf } from './separated.ts';
import { stretchesOf } from './stretches.ts';
import { textLines } from './textLines.ts';

/** Below this share of good lines a file is most likely at the wrong serial speed. Common practice, no source. */
const LEAST_GOOD_SHARE = 0.2;
/** Fewer good rows than this are no recording. [-] */
const LEAST_ROWS = 8;

function rawFile(file: RecordingFile, hints: ReadingHints): RawFile {
  const { lines, repairs } = textLines(file);
  const read = rowsOf(file.name, lines, hints);
  return { ...read, repairs: [...repairs, ...read.repairs] };
}

function rowsOf(name: string, lines: ReturnType<typeof textLines>['lines'], hints: ReadingHints): RawFile {
  if (areOurLines(lines)) return ourRows(name, lines);
  if (areJson(lines)) return jsonRows(name, lines, hints);
  const separation = separationOf(lines, hints.decimalComma ?? false);
  if (separation) return columnRows(name, lines, separation, hints);
  return {
    file: name,
    content: 'counts',
    columns: [],
    clockMs: 1,
    wrapsAt: 1,
    rows: [],
    repairs: [],
    lines: lines.length,
  };
}

function fileProblem({ file, rows, lines, columns }: RawFile): Problem | null {
  if (rows.length < LEAST_ROWS) {
    return {
      code: 'fit/no-rows',
      what: 'The file holds no recording that can be read.',
      where: file,
      got: `${rows.length} whole rows in ${lines} lines`,
      allowed: `${LEAST_ROWS} rows or more: time and one number for each channel, one row a line`,
      fix: 'Record again with one line for every read: milliseconds, then the counts of all channels, commas between.',
    };
  }
  if (columns.length === 0 || rows.length < LEAST_GOOD_SHARE * lines) {
    return {
      code: 'fit/mostly-rubbish',
      what: 'Most lines of the file cannot be read: was the serial monitor set to the wrong speed?',
      where: file,
      got: `${rows.length} whole rows in ${lines} lines`,
      allowed: 'at least one good line in five',
      fix: 'Set the monitor to the same bit/s as controller.baud and record the turn again.',
    };
  }
  return null;
}

function unlikeProblem(files: readonly RawFile[]): Problem | null {
  const [first] = files;
  const other = files.find((f) => f.columns.length !== first!.columns.length || f.content !== first!.content);
  if (!other) return null;
  return {
    code: 'fit/files-differ',
    what: 'The files do not hold the same columns, so they cannot be taken together.',
    where: other.file,
    got: `${other.columns.length} columns of ${other.content}`,
    allowed: `${first!.columns.length} columns of ${first!.content}, as in ${first!.file}`,
    fix: 'Record all files with the same program, or fit them one at a time.',
  };
}

/**
 * A recorded turn from files in whatever state they are: every line that was dropped, joined, moved or guessed is listed.
 *
 * Read are our own lines, JSON Lines, and columns parted by semicolon, tab, comma, bar or spaces, with names above,
 * beside or nowhere, and a serial monitor's times in front. Only known-good rows are kept; nothing is filled in.
 *
 * @param files - Decoded files; several of one build are taken together. n ≥ 1
 * @param hints - What the maker adds. [counts], [V], [-]
 * @throws `fit/no-files`, or together all of `fit/no-rows`, `fit/mostly-rubbish`, `fit/files-differ` that hold.
 * @check src/core/fit/reading/readRecording.test.ts
 */
export function readRecording(files: readonly RecordingFile[], hints: ReadingHints = {}): Recording {
  if (files.length === 0) throwIfAny([noFiles()]);
  const raw = files.map((file) => rawFile(file, hints));
  const problems = raw.flatMap((file) => fileProblem(file) ?? []);
  const unlike = problems.length === 0 ? unlikeProblem(raw) : null;
  throwIfAny(unlike ? [unlike] : problems);
  const parts = raw.map((file) => stretchesOf(file, hints.turned));
  const repairs: Repair[] = raw.flatMap((file, i) => inLineOrder([...file.repairs, ...parts[i]!.repairs]));
  return {
    content: raw[0]!.content,
    columns: raw[0]!.columns,
    stretches: parts.flatMap(({ stretches }) => stretches),
    repairs,
    hasTimes: parts.every(({ hasTimes }) => hasTimes),
  };
}

function inLineOrder(repairs: readonly Repair[]): Repair[] {
  return [...repairs].sort((a, b) => a.line - b.line);
}

function noFiles(): Problem {
  return {
    code: 'fit/no-files',
    what: 'There is no recording to read.',
    where: 'RECORDING',
    got: '0 files',
    allowed: 'one file or more',
    fix: 'Name the file that your serial monitor has saved.',
  };
}
