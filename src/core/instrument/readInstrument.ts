import { LineCounter } from 'yaml';
import type { DiscSpec } from '../disc/index.ts';
import { BrokenPromise, throwIfAny, VanewrightError } from '../error/index.ts';
import { checkFields } from './checkFields.ts';
import { versionProblem } from './checkVersion.ts';
import type { Instrument } from './instrument.ts';
import { problemAt, type FieldProblem } from './problems/fieldProblem.ts';
import { shown, spelt } from './problems/words.ts';
import { resolveDisc, resolveInstrument } from './resolveInstrument.ts';
import { FILE_VERSION } from './schema/instrumentSchema.ts';
import { inReadingOrder, type PlacedProblem } from './yaml/placedProblem.ts';
import { pathFrom, Places } from './yaml/places.ts';
import { characterProblem, plainText, sizeProblem } from './yaml/readableText.ts';
import { yamlDocument } from './yaml/yamlDocument.ts';
import { yamlTree, type Fields } from './yaml/yamlTree.ts';

/** An instrument file, read. */
export interface InstrumentFile {
  readonly instrument: Instrument;
  /**
   * `file:line:column › field` of a field path such as `disc.bore.diameterMm`.
   *
   * Where the file leaves the field to its default, the place of the nearest group that is written.
   */
  placeOf(fieldPath: string): string;
}

/** Line starts of a text. */
function lineCounterOf(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) lines.addNewLine(i + 1);
  return lines;
}

/** The whole file as a group of fields. @throws when it is empty or something else */
function rootFields(value: unknown, places: Places): Fields {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value as Fields;
  throw new VanewrightError({
    code: value === null ? 'instrument/empty-file' : 'instrument/not-fields',
    what: value === null ? 'The file says nothing.' : 'The file is not made of fields.',
    where: places.at(places.offsetOf([])),
    got: value === null ? 'no fields' : shown(value),
    allowed: '`name: value`, one a line, the first of them `vanewright: 1`',
    fix: 'Begin with a fresh file from `vanewright new`.',
  });
}

/** The text as plain values, places beside; problems of single fields are collected, others thrown. */
function parse(text: string, fileName: string) {
  const plain = plainText(text);
  const lines = lineCounterOf(plain);
  const places = new Places(fileName, lines);
  const unreadable = characterProblem(plain, (offset) => places.at(offset));
  if (unreadable) throw new VanewrightError(unreadable);
  const { value, problems, unknown } = yamlTree(yamlDocument(plain, places, lines), places);
  return { fields: rootFields(value, places), places, problems, unknown };
}

/**
 * Reads an instrument file: YAML 1.2 or JSON.
 *
 * @param text - The whole file, decoded; a byte order mark and any line ends are fine. [characters]
 * @param fileName - Shown in front of line and column.
 * @returns The instrument with every default filled in, and where its fields stand.
 * @throws VanewrightError with every problem found, from top to bottom; each `instrument/…` code of docs/errors/instrument.md.
 * @check src/core/instrument/badFiles.test.ts, with the files of test/corpus/instrument
 */
export function readInstrument(text: string, fileName: string): InstrumentFile {
  const name = spelt(fileName);
  const tooLarge = sizeProblem(text, name);
  if (tooLarge) throw new VanewrightError(tooLarge);
  const { fields, places, problems, unknown } = parse(text, name);
  const place = (problem: FieldProblem): PlacedProblem => ({
    offset: places.offsetOf(problem.path, problem.part),
    problem: problemAt(places.of(problem.path, problem.part), problem),
  });

  const version = versionProblem(fields, places);
  if (version?.isLast) throw new VanewrightError(place(version.problem).problem);
  const { draft, problems: ofFields } = checkFields({ ...fields, vanewright: FILE_VERSION }, unknown);
  const found = version ? [version.problem, ...ofFields] : ofFields;
  throwIfAny(inReadingOrder([...problems, ...found.map(place)]));
  if (!draft) throw new BrokenPromise('A file that does not fit the schema has no problem.');
  return { instrument: resolveInstrument(draft), placeOf: (fieldPath) => places.of(pathFrom(fieldPath)) };
}

/**
 * The disc of a file whose fields are each in range but do not fit each other, so that it can be drawn with what is wrong.
 *
 * @param text - The whole file. [characters]
 * @returns Sizes as asked for [mm], or `null` where a field is wrong by itself.
 * @check test/journeys/makeFaults.test.ts
 */
export function discAsWritten(text: string): DiscSpec | null {
  try {
    const { fields, unknown } = parse(text, '');
    const { draft } = checkFields({ ...fields, vanewright: FILE_VERSION }, unknown);
    return draft && resolveDisc(draft.disc);
  } catch (error) {
    if (error instanceof VanewrightError) return null;
    throw error;
  }
}
