import { codeTable, type CodeTable } from '../codeTable.ts';
import { naturalBinary } from '../families/naturalBinary.ts';
import { reflectedGray } from '../families/reflectedGray.ts';
import { switchRing } from '../families/switchRing.ts';
import { ternaryModular } from '../families/ternaryModular.ts';
import { ternaryReflected } from '../families/ternaryReflected.ts';
import type { CodeFamily } from '../family.ts';
import type { Word } from '../model.ts';
import { codeProperties } from '../properties/properties.ts';
import { DEFAULT_SEARCH } from '../search/limits.ts';
import { tracksFor } from '../wordTracks.ts';

/** What a list of words turns out to be. */
export interface CodeName {
  /** Family it belongs to, whatever its first position, sense, order of channels and naming of levels; or `null`. */
  readonly family: string | null;
  /** Name in a sentence. */
  readonly title: string;
  /** What is true of it, each in a few words. */
  readonly traits: readonly string[];
}

/**
 * Families that make one code for a count; the others search, and their codes are known by their traits.
 *
 * Three greys come before three colours, since at some counts both are the same words and that one promises more.
 */
const FIXED_FAMILIES: readonly CodeFamily[] = [
  reflectedGray,
  naturalBinary,
  switchRing,
  ternaryReflected,
  ternaryModular,
];

/** For each boundary, how far back each changing channel changed before: the same for any order of the channels. */
function rhythm(words: readonly Word[]): string[] {
  const last = new Map<number, number>();
  const beats: string[] = [];
  // Twice round: the first round only fills in the changes before the first boundary.
  for (let step = 0; step < 2 * words.length; step++) {
    const [word, next] = [words[step % words.length]!, words[(step + 1) % words.length]!];
    const changing = [...word].flatMap((level, c) => (level === next[c] ? [] : [c]));
    const backs = changing.map((c) => step - (last.get(c) ?? step - words.length));
    for (const c of changing) last.set(c, step);
    beats[step % words.length] = backs.sort((a, b) => a - b).join('.');
  }
  return beats;
}

/**
 * Where the alphabetically least turn of a circle begins.
 *
 * @source K. S. Booth, Lexicographically least circular substrings, Inf. Process. Lett. 10 (1980) 240 (two-pointer form).
 */
function leastTurn(beats: readonly string[]): number {
  const n = beats.length;
  let [i, j, k] = [0, 1, 0];
  while (i < n && j < n && k < n) {
    const [a, b] = [beats[(i + k) % n]!, beats[(j + k) % n]!];
    if (a === b) {
      k += 1;
      continue;
    }
    if (a > b) i += k + 1;
    else j += k + 1;
    if (i === j) j += 1;
    k = 0;
  }
  return Math.min(i, j);
}

/** The words begun at the least turn of their rhythm, each channel with its levels named by first appearance, sorted. */
function likeness(words: readonly Word[]): string {
  const start = leastTurn(rhythm(words));
  const turned = words.map((_, k) => words[(start + k) % words.length]!);
  const channels = [...turned[0]!].map((_, c) => {
    const names = new Map<string, number>();
    return turned
      .map((word) => {
        if (!names.has(word[c]!)) names.set(word[c]!, names.size);
        return names.get(word[c]!);
      })
      .join('');
  });
  return channels.sort().join('|');
}

/** The family that makes these words for their count, and whether they run the other way. */
function familyOf(table: CodeTable): { readonly family: CodeFamily; readonly isReversed: boolean } | null {
  const [ours, reversed] = [likeness(table.words), likeness([...table.words].reverse())];
  for (const family of FIXED_FAMILIES) {
    const open =
      family.options.includes('seam') && table.positions % 2 === 1 ? ({ seam: 'open' } as const) : {};
    if (family.refusal(table.positions, open)) continue;
    const { words } = codeTable(
      family.name,
      table.positions,
      family.build(table.positions, open, DEFAULT_SEARCH),
    );
    if (words[0]!.length !== table.channels.length) continue;
    const theirs = likeness(words);
    if (theirs === ours) return { family, isReversed: false };
    if (theirs === reversed) return { family, isReversed: true };
  }
  return null;
}

/** Whether every channel reads the same pattern, only turned. */
function isOneTrack(words: readonly Word[]): boolean {
  const rings = [...words[0]!].map((_, c) => words.map((word) => word[c]).join(''));
  return rings.length > 1 && rings.every((ring) => `${rings[0]}${rings[0]}`.includes(ring));
}

/** Whether the word moves on by one channel at every step, one way or the other. */
function isWindow(words: readonly Word[]): boolean {
  const moves = (list: readonly Word[]): boolean =>
    list.every((word, k) => list[(k + 1) % list.length]!.slice(0, -1) === word.slice(1));
  return words[0]!.length > 1 && (moves(words) || moves([...words].reverse()));
}

function traitsOf(table: CodeTable): string[] {
  const { singleStep, multiStepBoundaries, tracks, shortestRunSteps, worstErrorPositions } =
    codeProperties(table);
  const changes = tracks.map(({ transitions }) => transitions);
  const spare = table.channels.length - tracksFor(table.positions);
  return [
    singleStep
      ? 'one channel changes at every boundary'
      : `several channels change at ${multiStepBoundaries.length} of the boundaries, misread up to ${worstErrorPositions} positions away`,
    ...(isOneTrack(table.words) ? ['all channels can read one track'] : []),
    ...(isWindow(table.words) ? ['a window that moves on by one channel a step'] : []),
    ...(singleStep && Math.max(...changes) - Math.min(...changes) <= 2 ? ['equally busy channels'] : []),
    ...(shortestRunSteps > 2 ? [`marks of ${shortestRunSteps} steps or more`] : []),
    ...(spare > 0 && tracks.length === table.channels.length
      ? [`${spare} more channels than the count needs`]
      : []),
  ];
}

/** A name from the traits, where no family makes these very words. */
function titleOf(table: CodeTable, traits: readonly string[]): string {
  if (isWindow(table.words)) return 'a shift-register code';
  if (!traits[0]!.startsWith('one channel')) return 'an own code that changes several channels at once';
  if (isOneTrack(table.words)) return 'a single-track Gray code';
  return traits.includes('equally busy channels') ? 'a balanced Gray code' : 'an own Gray code';
}

/**
 * What a code table turns out to be, whoever wrote its words.
 *
 * @returns The family that makes these words, if any, up to turning, reversing, reordering channels and renaming levels.
 * @check src/core/codes/exchange/nameCode.test.ts
 */
export function nameCode(table: CodeTable): CodeName {
  const traits = traitsOf(table);
  const found = familyOf(table);
  if (!found) return { family: null, title: titleOf(table, traits), traits };
  const title = found.isReversed ? `${found.family.title}, the other way round` : found.family.title;
  return { family: found.family.name, title, traits };
}
