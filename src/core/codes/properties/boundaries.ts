import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { positionsApart, wordAt, type CodeTable } from '../codeTable.ts';
import type { CodePlan, Level, Word } from '../model.ts';

/**
 * What a channel may read while an edge passes it.
 *
 * `unordered`: one mark or the other (two levels, or colours of which none lies in a blend of the others).
 * `ordered`: every level between the two as well (grey levels, which pass through the middle one).
 */
export type LevelOrder = 'unordered' | 'ordered';

/** One place of the turn where at least one channel changes. */
export interface Boundary {
  /** Disc angle of the head's reference line. [deg], [0, 360) */
  readonly angleDeg: Degrees;
  /** Position on either side; the same on both where an edge lies inside a step. */
  readonly positionBefore: number;
  readonly positionAfter: number;
  /** What the channels read on either side. */
  readonly before: Word;
  readonly after: Word;
  /** Channels that change here, ascending. n >= 1 */
  readonly changing: readonly number[];
}

/** What a disc stopped on one boundary can show. */
export interface HalfTurned {
  /** Different words that can show, both neighbours included. [-] */
  readonly words: number;
  /** How many of those the code does not have. [-] */
  readonly illegal: number;
  /** Positions the legal ones stand for, ascending. */
  readonly positions: readonly number[];
  /** Farthest of those from the nearer of the two true neighbours, round the circle. [positions] */
  readonly worstErrorPositions: number;
}

/** Two edges closer than this are one edge that was rounded. [deg] */
const SAME_ANGLE_DEG = 1e-7;

/** Every disc angle at which some channel changes, ascending; near-equal ones kept once. [deg] */
function edgeAnglesDeg({ tracks, channels }: CodePlan): Degrees[] {
  const all = channels.flatMap(({ track, angleDeg }) => {
    const { startsDeg } = tracks[track]!;
    return startsDeg.length === 1 ? [] : startsDeg.map((start) => wrapDegrees(start - angleDeg));
  });
  const kept: Degrees[] = [];
  for (const angle of all.sort((a, b) => a - b)) {
    if (kept.length === 0 || angle - kept.at(-1)! > SAME_ANGLE_DEG) kept.push(angle);
  }
  // An edge rounded to just under 360 is the edge at 0.
  if (kept.length > 1 && kept[0]! + 360 - kept.at(-1)! <= SAME_ANGLE_DEG) kept.pop();
  return kept;
}

/**
 * Every boundary of a turn, in order of disc angle, from the edges themselves and not from the list of words.
 *
 * @returns One entry an angle; channels that change at one angle share it. Empty for a disc without edges.
 */
export function boundaries(table: CodeTable): Boundary[] {
  const angles = edgeAnglesDeg(table);
  const stepDeg = 360 / table.positions;
  const positionAt = (angle: Degrees): number =>
    Math.min(table.positions - 1, Math.floor(wrapDegrees(angle) / stepDeg));
  // The middle of each gap between neighbouring edges; gap i lies before edge i.
  const middles = angles.map((angle, i) => {
    const last = i === 0 ? angles.at(-1)! - 360 : angles[i - 1]!;
    return (last + angle) / 2;
  });
  const words = middles.map((middle) => wordAt(table, middle));
  return angles.map((angleDeg, i) => {
    const next = (i + 1) % angles.length;
    const [before, after] = [words[i]!, words[next]!];
    return {
      angleDeg,
      positionBefore: positionAt(angleDeg - SAME_ANGLE_DEG * 2),
      positionAfter: positionAt(angleDeg + SAME_ANGLE_DEG * 2),
      before,
      after,
      changing: table.channels.flatMap((_, c) => (before[c] === after[c] ? [] : [c])),
    };
  });
}

/** What one channel may read between two levels. */
function readable(from: number, to: number, order: LevelOrder): Level[] {
  if (from === to || order === 'unordered') return [...new Set([from, to])] as Level[];
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  return Array.from({ length: high - low + 1 }, (_, i) => (low + i) as Level);
}

/**
 * What a disc stopped on a boundary can show when every changing channel may read either way.
 *
 * No list of words is made: each word the code has is asked whether it can show, and the rest is counted.
 *
 * @source derived: k channels that change together show any of 2^k words (edges never fall at exactly one angle).
 * @check test/published/binary-boundaries (natural binary, n = 5: 15 positions from the nearer neighbour)
 */
export function halfTurned(
  table: CodeTable,
  boundary: Boundary,
  order: LevelOrder = 'unordered',
): HalfTurned {
  const { before, after, positionBefore, positionAfter } = boundary;
  const choices = Array.from(before, (from, c) => readable(Number(from), Number(after[c]), order));
  const words = choices.reduce((product, choice) => product * choice.length, 1);
  const positions = new Set<number>();
  let legal = 0;
  for (const { word, standsFor } of shown(table, choices, words)) {
    const position = table.nextPosition(word, positionBefore);
    if (position === null) continue;
    legal += standsFor;
    positions.add(position);
  }
  const errors = [...positions].map((p) =>
    Math.min(
      positionsApart(p, positionBefore, table.positions),
      positionsApart(p, positionAfter, table.positions),
    ),
  );
  return {
    words,
    illegal: words - legal,
    positions: [...positions].sort((a, b) => a - b),
    worstErrorPositions: Math.max(0, ...errors),
  };
}

/** A word that can show, standing for as many as are read alike. */
interface Shown {
  readonly word: Word;
  readonly standsFor: number;
}

/** The words that fit the choices and may be legal, by whichever list is shorter. */
function shown(table: CodeTable, choices: readonly Level[][], count: number): Shown[] {
  const { strobe, words, positions } = table;
  const off = strobe ? choices[strobe.channel]!.find((level) => level !== strobe.level) : undefined;
  if (strobe && off !== undefined) {
    // All words without the strobe are read alike: the last position stands.
    const ways = choices[strobe.channel]!.length;
    const held = { word: wordOf(choices, strobe.channel, off), standsFor: count / ways };
    const lit = choices.map((choice, c) => (c === strobe.channel ? [strobe.level] : choice));
    return ways === 1 ? [held] : [held, ...shown(table, lit, count / ways)];
  }
  const among = count > positions ? fitting(words, choices) : everyWord(choices);
  return among.map((word) => ({ word, standsFor: 1 }));
}

/** One word that fits the choices, with a given level on one channel. */
function wordOf(choices: readonly Level[][], channel: number, level: Level): Word {
  return choices.map((choice, c) => (c === channel ? level : choice[0]!)).join('');
}

/** Different words of a list that fit the choices. */
function fitting(words: readonly Word[], choices: readonly Level[][]): Word[] {
  const fits = (word: Word): boolean =>
    choices.every((choice, c) => choice.includes(Number(word[c]) as Level));
  return [...new Set(words)].filter(fits);
}

/** Every word that fits the choices. */
function everyWord(choices: readonly Level[][]): Word[] {
  return choices.reduce<Word[]>(
    (heads, choice) => heads.flatMap((head) => choice.map((level) => `${head}${level}`)),
    [''],
  );
}
