import { throwIfAny, type Problem } from '../../error/index.ts';
import { codeTable, type CodeTable } from '../codeTable.ts';
import type { CodeBuild } from '../family.ts';
import { POSITIONS_RANGE } from '../model.ts';
import { fieldProblem, isRecord, planProblems } from './planProblems.ts';
import { listed, sizeProblems, OWN_WORDS, tableOfWords, wordProblems } from './wordList.ts';

/** Version of the document, in its first field. */
const VERSION_FIELD = 'vanewrightCode';
const VERSION = 1;

/** Fields of the document; the words alone are enough for a maker's own code. */
const FIELDS = [
  VERSION_FIELD,
  'family',
  'positions',
  'tracks',
  'channels',
  'strobe',
  'countingChannels',
  'words',
];

/**
 * A code table as one JSON document: tracks and channels, which are the code, and the words they show.
 *
 * @returns Text ended by a newline; equal tables give equal bytes.
 * @check src/core/codes/exchange/exchange.test.ts
 */
export function codeJson(table: CodeTable): string {
  const { family, positions, tracks, channels, strobe, countingChannels, words } = table;
  const document = {
    [VERSION_FIELD]: VERSION,
    family,
    positions,
    tracks,
    channels,
    strobe,
    countingChannels,
    words,
  };
  return `${JSON.stringify(document, null, 1)}\n`;
}

/** The document, or why the text is none. */
function parse(text: string, file: string): Record<string, unknown> {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    // The engine names the place only in its message.
    const at = Number(/position (\d+)/.exec(String(error))?.[1] ?? text.length);
    const line = text.slice(0, at).split('\n').length;
    throwIfAny([
      {
        code: 'codes/not-json',
        what: 'The code file is not JSON.',
        where: `${file}:${line}`,
        got: JSON.stringify(text.slice(Math.max(0, at - 20), at + 20)),
        allowed: 'one JSON object',
        fix: 'Write the file again from the tool that made it, or give the words one a line in a .csv file.',
      },
    ]);
  }
  if (isRecord(value)) return value;
  throwIfAny([fieldProblem(`${file}`, typeof value, 'one JSON object')]);
  return {};
}

function headProblems(document: Record<string, unknown>, file: string): Problem[] {
  const unknown = Object.keys(document).filter((field) => !FIELDS.includes(field));
  const problems = unknown.map((field) =>
    fieldProblem(`${file} › ${field}`, 'an unknown field', FIELDS.join(', ')),
  );
  const version = document[VERSION_FIELD];
  if (version !== VERSION) {
    problems.push(
      fieldProblem(`${file} › ${VERSION_FIELD}`, JSON.stringify(version) ?? 'nothing', String(VERSION)),
    );
  }
  const { words, tracks } = document;
  if (words === undefined && tracks === undefined) {
    problems.push(fieldProblem(`${file} › words`, 'nothing', 'a list of words, or tracks and channels'));
  }
  if (words !== undefined && !(Array.isArray(words) && words.every((word) => typeof word === 'string'))) {
    problems.push(fieldProblem(`${file} › words`, typeof words, 'a list of texts such as "0100"'));
  }
  return problems;
}

/** Positions at which the words of the file are not those that its tracks and channels show. */
function mismatchProblems(words: readonly string[], table: CodeTable, file: string): Problem[] {
  return table.words.flatMap((word, k) =>
    words[k] === word
      ? []
      : [
          {
            code: 'codes/words-do-not-match',
            what: 'The words of the file are not those that its tracks and channels show.',
            where: `${file} › words[${k}]`,
            got: words[k] ?? 'nothing',
            allowed: word,
            fix: 'Remove the field words, or remove tracks and channels if the words are right.',
          },
        ],
  );
}

/** Table of a document with tracks and channels. */
function tableOfPlan(document: Record<string, unknown>, file: string): CodeTable {
  const { least, most } = POSITIONS_RANGE;
  const problems = planProblems(document, file);
  const { positions, family } = document;
  if (!(Number.isInteger(positions) && Number(positions) >= least && Number(positions) <= most)) {
    const allowed = `a whole number from ${least} to ${most}`;
    problems.push(fieldProblem(`${file} › positions`, JSON.stringify(positions) ?? 'nothing', allowed));
  }
  throwIfAny(listed(problems));
  // The fields have just been checked one by one.
  const plan = document as unknown as CodeBuild;
  return codeTable(typeof family === 'string' ? family : OWN_WORDS, positions as number, plan);
}

/**
 * A code from a JSON document: from its tracks and channels where it has them, else from its words.
 *
 * @param file - Name shown in problems.
 * @throws `codes/file-too-large`; `codes/not-json` with the line; `codes/bad-code-field` with the field; `codes/words-do-not-match`; and the
 *   problems of `readCodeCsv` about words.
 * @check src/core/codes/exchange/exchange.test.ts
 */
export function readCodeJson(text: string, file: string): CodeTable {
  throwIfAny(sizeProblems(text, file));
  const document = parse(text, file);
  throwIfAny(listed(headProblems(document, file)));
  const words = document['words'] as readonly string[] | undefined;
  if (document['tracks'] === undefined) {
    const placed = words!.map((word, k) => ({ word, where: `${file} › words[${k}]` }));
    throwIfAny(listed(wordProblems(placed, `${file} › words`)));
    return tableOfWords(words!);
  }
  const table = tableOfPlan(document, file);
  if (words) throwIfAny(listed(mismatchProblems(words, table, file)));
  return table;
}
