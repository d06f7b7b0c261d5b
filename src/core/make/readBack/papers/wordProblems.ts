import { readCodeJson, type CodeTable, type Word } from '../../../codes/index.ts';
import { VanewrightError, type Problem } from '../../../error/index.ts';
import type { MadeFile } from '../../madeFile.ts';
import { disagreement } from '../disagreement.ts';
import { readCsv } from './readCsv.ts';

/** Words a file says, by their positions, with what they are about. */
interface SaidWords {
  readonly said: ReadonlyMap<number, Word>;
  /** Positions it should speak of; all where left out. */
  readonly isWhole: boolean;
}

const all = (words: readonly Word[]): SaidWords => ({ said: new Map(words.entries()), isWhole: true });

/** Number of a word in a program, as its table packs it. */
const packed = (word: Word, levels: number): number => parseInt(word, levels === 3 ? 4 : 2);

const numbersIn = (text: string | undefined): number[] => (text?.match(/\d+/g) ?? []).map(Number);

/** Words by position in the tables of a program, in the language of its file. */
function programWords(text: string, words: readonly Word[]): SaidWords {
  const levels = words.some((word) => word.includes('2')) ? 3 : 2;
  const wordOf = new Map(words.map((word) => [packed(word, levels), word]));
  const list = (name: string): number[] =>
    numbersIn(new RegExp(`\\b${name}\\b[^={;]*=\\s*\\{([^}]*)\\}`).exec(text)?.[1]);
  const pairs = /\bPOSITION_OF_WORD = \{(\s*\d+:[^}]*)\}/.exec(text)?.[1];
  const [dense, sorted, sortedPositions] = [
    list('POSITION_OF_WORD'),
    list('SORTED_WORD'),
    list('SORTED_POSITION'),
  ];
  const rows = pairs
    ? [...pairs.matchAll(/(\d+):\s*(\d+)/g)].map(([, word, at]) => [Number(at), Number(word)] as const)
    : sorted.length > 0
      ? sorted.map((word, i) => [sortedPositions[i]!, word] as const)
      : dense.flatMap((at, word) => (at < words.length ? [[at, word] as const] : []));
  return { said: new Map(rows.map(([at, word]) => [at, wordOf.get(word) ?? `${word}`])), isWhole: true };
}

/**
 * Words by the position beside them. They are read as they stand: a wheel that counts repeats its words, and a strobe
 * never changes, which a maker's own code may not.
 */
function csvWords(text: string): SaidWords {
  const [heading = [], ...rows] = readCsv(text);
  const [position, word] = [heading.indexOf('position'), heading.indexOf('word')];
  return { said: new Map(rows.map((row) => [Number(row[position]), row[word] ?? ''])), isWhole: true };
}

/** Rows of the table in the page that tells how a disc works; it may leave the middle ones out. */
function pageWords(text: string): SaidWords {
  const rows = [...text.matchAll(/<tr><td>(\d+)<\/td><td>([012]+)<\/td>/g)];
  return { said: new Map(rows.map(([, at, word]) => [Number(at), word!])), isWhole: false };
}

/** Words that a file says; `null` where it says none. */
function wordsOf({ path, content }: MadeFile, words: readonly Word[]): SaidWords | null {
  if (typeof content !== 'string') return null;
  if (path === 'code.csv') return csvWords(content);
  if (path === 'code.json') return all(readCodeJson(content, path).words);
  if (path === 'how-it-works.html') return pageWords(content);
  if (/^program\/.*[.](ino|py|h)$/.test(path)) return programWords(content, words);
  return null;
}

function differing({ path }: MadeFile, { said, isWhole }: SaidWords, words: readonly Word[]): Problem[] {
  const what = 'A file was read back and gives another word to a position.';
  if (said.size === 0) return [disagreement(path, what, 'no word', `${words.length} words`)];
  // Where words are shared, a table keeps one of their positions.
  const asked = isWhole
    ? [...words.keys()].filter((at) => words.lastIndexOf(words[at]!) === at)
    : said.keys();
  for (const at of asked) {
    if (said.get(at) === words[at] && words[at] !== undefined) continue;
    const got = said.get(at);
    return [
      disagreement(
        `${path}, position ${at}`,
        what,
        got ? `word ${got}` : 'no word',
        words[at] ? `word ${words[at]}` : 'no such position',
      ),
    ];
  }
  return [];
}

/** What the words of a result should be: those drawn, and those the program reads by. */
export interface WantedWords {
  readonly code: Pick<CodeTable, 'words'>;
  /** Words of the finished build where it was measured, else those drawn. */
  readonly programWords: readonly Word[];
}

/**
 * Files that give a position another word than the design does: tables, pages and programs.
 *
 * @param files - A whole result; others are passed over.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function wordProblems(files: readonly MadeFile[], wanted: WantedWords): Problem[] {
  return files.flatMap((file) => {
    const words = file.path.startsWith('program/') ? wanted.programWords : wanted.code.words;
    try {
      const said = wordsOf(file, words);
      return said ? differing(file, said, words) : [];
    } catch (error) {
      if (!(error instanceof VanewrightError)) throw error;
      const [problem] = error.problems;
      const what = 'A file of the code was read back and is not one.';
      return [disagreement(file.path, what, problem?.got ?? 'nothing', problem?.allowed ?? 'a code file')];
    }
  });
}
