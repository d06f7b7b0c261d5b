import { Composer, Lexer, Parser, type Document, type LineCounter, type ParsedNode } from 'yaml';
import { throwIfAny, VanewrightError, type Problem } from '../../error/index.ts';
import { quoted } from '../problems/words.ts';
import { inReadingOrder, type PlacedProblem } from './placedProblem.ts';
import type { Places } from './places.ts';
import { syntaxProblem } from './syntaxProblem.ts';

/** Deepest nesting of groups and lists; an instrument file needs four. */
export const MOST_DEPTH = 32;

/** Most words, signs and line ends of a file: some hundred times a usual one. */
const MOST_MARKS = 200_000;

/** Longest single word, text or comment line. [characters] */
const LONGEST_MARK = 10_000;

type Token = Parser['stack'][number];

/** Refuses a file that would take the reader's time or memory, at the mark where that shows. */
function refuse(places: Places, offset: number, problem: Omit<Problem, 'where' | 'fix'>): never {
  throw new VanewrightError({
    ...problem,
    where: places.at(offset),
    fix: 'Check that this is the instrument file; a usual one has some hundred short lines.',
  });
}

/** Cuts the text into tokens, and stops at once where it nests or grows beyond any instrument file. */
function tokensOf(text: string, places: Places): Token[] {
  const parser = new Parser();
  const tokens: Token[] = [];
  let marks = 0;
  for (const mark of new Lexer().lex(text)) {
    if (++marks > MOST_MARKS) {
      const got = `more than ${MOST_MARKS} words and signs`;
      refuse(places, parser.offset, {
        code: 'instrument/too-many-values',
        what: 'The file holds far more than an instrument file can.',
        got,
        allowed: `at most ${MOST_MARKS}`,
      });
    }
    if (mark.length > LONGEST_MARK) {
      refuse(places, parser.offset, {
        code: 'instrument/value-too-long',
        what: 'One word or text of the file is far too long.',
        got: `${mark.length} characters`,
        allowed: `at most ${LONGEST_MARK} characters`,
      });
    }
    tokens.push(...parser.next(mark));
    if (parser.stack.length > 2 * MOST_DEPTH) refuseDepth(places, parser.offset); // a group takes up to two places
  }
  tokens.push(...parser.end());
  return tokens;
}

/** Refuses groups within groups within groups. */
export function refuseDepth(places: Places, offset: number): never {
  return refuse(places, offset, {
    code: 'instrument/too-deep',
    what: 'Groups or lists are nested too deep.',
    got: `more than ${MOST_DEPTH} levels`,
    allowed: `at most ${MOST_DEPTH} levels; an instrument file needs four`,
  });
}

/** A `%` line, which could turn the file into YAML 1.1, where `no` means false. */
function directiveProblem(document: Document, text: string, places: Places): PlacedProblem[] {
  const { yaml, tags } = document.directives!;
  if (!yaml.explicit && Object.keys(tags).length <= 1) return []; // `!!` is always among the tags
  const offset = Math.max(text.search(/^%/m), 0);
  return [
    {
      offset,
      problem: {
        code: 'instrument/yaml-directive',
        what: 'The file has a % line, which an instrument file does not use.',
        where: places.at(offset),
        got: quoted(text.slice(offset).split('\n', 1)[0]!),
        allowed: 'no % line: the file is YAML 1.2',
        fix: 'Remove the % line.',
      },
    },
  ];
}

function documentsProblem(documents: readonly Document.Parsed[], places: Places): PlacedProblem[] {
  const second = documents[1];
  if (!second) return [];
  return [
    {
      offset: second.range[0],
      problem: {
        code: 'instrument/several-documents',
        what: 'The file holds more than one document.',
        where: places.at(second.range[0]),
        got: `${documents.length} documents`,
        allowed: '1 document',
        fix: 'Keep one instrument a file, and remove the line of three dashes or dots between them.',
      },
    },
  ];
}

/** The one YAML document in a text. @throws VanewrightError with everything that is not YAML */
export function yamlDocument(text: string, places: Places, lines: LineCounter): Document.Parsed<ParsedNode> {
  const composer = new Composer({ version: '1.2', schema: 'core', uniqueKeys: false, lineCounter: lines });
  const documents = [...composer.compose(tokensOf(text, places), true, text.length)];
  const document = documents[0]!; // the composer was told to make one even of nothing
  const problems = [
    ...directiveProblem(document, text, places),
    ...documents.flatMap(({ errors }) => errors).map((error) => syntaxProblem(error, text, places)),
    ...documentsProblem(documents, places),
  ];
  throwIfAny(inReadingOrder(problems));
  return document;
}
