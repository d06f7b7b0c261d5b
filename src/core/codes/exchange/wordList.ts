import type { Problem } from '../../error/index.ts';
import { codeTable, type CodeTable } from '../codeTable.ts';
import { POSITIONS_RANGE, type Level, type Word } from '../model.ts';
import { trackFromCells } from '../track.ts';

/** Family of a table made from a maker's own words. */
export const OWN_WORDS = 'own-words';

/** Longest code file that is read: far beyond 4096 positions in either form. [characters] */
const MOST_CHARACTERS = 4_000_000;

/** Refuses a file too long to be a code. */
export function sizeProblems(text: string, file: string): Problem[] {
  if (text.length <= MOST_CHARACTERS) return [];
  return [
    {
      code: 'codes/file-too-large',
      what: 'The file is too long to be a code.',
      where: file,
      got: `${text.length} characters`,
      allowed: `${MOST_CHARACTERS} characters or fewer`,
      fix: 'Give one word a line, 4096 lines or fewer.',
    },
  ];
}

/** Problems of one file that are listed one by one; the rest are counted. */
const MOST_LISTED = 20;

/** A word as it stands in a file, with its place there: `codes.csv:7`. */
export interface PlacedWord {
  readonly word: Word;
  readonly where: string;
}

/** Shortens a long list of problems, and says how many more there are. */
export function listed(problems: readonly Problem[]): Problem[] {
  if (problems.length <= MOST_LISTED) return [...problems];
  const rest = problems.length - MOST_LISTED;
  const last = problems[MOST_LISTED - 1]!;
  return [
    ...problems.slice(0, MOST_LISTED - 1),
    { ...last, what: `${last.what} (And ${rest} more problems like these.)` },
  ];
}

/** Words with a sign that is no level, or of another length than the rest. */
function shapeProblems(words: readonly PlacedWord[]): Problem[] {
  const lengths = words.map(({ word }) => word.length);
  const longest = Math.max(0, ...lengths);
  return words.flatMap(({ word, where }) => {
    if (!/^[012]+$/.test(word)) {
      return [
        {
          code: 'codes/word-not-levels',
          what: 'A word holds something other than levels.',
          where,
          got: JSON.stringify(word.slice(0, 40)),
          allowed: 'one digit a channel: 0 or 1, or 0, 1 and 2 for three colours',
          fix: 'Write the word as digits without spaces, channel 0 first, such as 0100.',
        },
      ];
    }
    if (word.length === longest) return [];
    return [
      {
        code: 'codes/word-length',
        what: 'A word has fewer digits than the others; a spreadsheet drops zeros in front.',
        where,
        got: `${word} (${word.length} digits)`,
        allowed: `${longest} digits, one a channel`,
        fix: `If zeros were dropped, write ${word.padStart(longest, '0')}, with the column set to text.`,
      },
    ];
  });
}

/** Words that show twice. */
function twinProblems(words: readonly PlacedWord[]): Problem[] {
  const first = new Map<Word, string>();
  return words.flatMap(({ word, where }) => {
    const twin = first.get(word);
    if (twin === undefined) {
      first.set(word, where);
      return [];
    }
    return [
      {
        code: 'codes/word-repeats',
        what: 'Two positions of the disc show the same word, so they cannot be told apart.',
        where,
        got: `word ${word}, also at ${twin}`,
        allowed: 'a different word at every position',
        fix: 'Change one of the two words, or add a channel.',
      },
    ];
  });
}

/** Channels that read the same everywhere. */
function idleProblems(words: readonly PlacedWord[]): Problem[] {
  return [...words[0]!.word].flatMap((level, channel) =>
    words.every(({ word }) => word[channel] === level)
      ? [
          {
            code: 'codes/channel-never-changes',
            what: 'A channel reads the same at every position, so it tells nothing.',
            where: words[0]!.where,
            got: `${level} on channel ${channel}, digit ${channel + 1} of every word`,
            allowed: 'a channel that changes at least twice a turn',
            fix: `Leave out digit ${channel + 1} of every word.`,
          },
        ]
      : [],
  );
}

/** Everything that keeps a list of words from being a code. */
export function wordProblems(words: readonly PlacedWord[], where: string): Problem[] {
  const { least, most } = POSITIONS_RANGE;
  if (words.length < least || words.length > most) {
    return [
      {
        code: 'codes/count-out-of-range',
        what: 'A disc cannot have that many positions.',
        where,
        got: `${words.length} words`,
        allowed: `${least} to ${most} words, one a position`,
        fix: 'Give one word for every position of a turn.',
      },
    ];
  }
  const shape = shapeProblems(words);
  return shape.length > 0 ? shape : [...twinProblems(words), ...idleProblems(words)];
}

/**
 * The code table of words that have no problem: one track and one channel a digit, no head moved.
 *
 * @param words - One a position, in order. n = positions
 */
export function tableOfWords(words: readonly Word[]): CodeTable {
  const tracks = [...words[0]!].map((_, channel) => {
    const cells = words.map((word) => Number(word[channel]) as Level);
    return trackFromCells(cells, cells.includes(2) ? 3 : 2);
  });
  return codeTable(OWN_WORDS, words.length, {
    tracks,
    channels: tracks.map((_, track) => ({ track, angleDeg: 0 })),
  });
}
