import { positionsApart, type CodeTable } from '../codeTable.ts';
import type { Level, Word } from '../model.ts';

/** What is left of a code when one channel always reads one level. */
export interface DeadChannel {
  readonly channel: number;
  /** Level it is stuck at. */
  readonly level: Level;
  /** Positions read as before, because the channel reads that level there anyway. [-] */
  readonly right: number;
  /** Positions that show a word the code does not have: the fault is seen. [-] */
  readonly seen: number;
  /** Positions read as another one, and nothing tells it. [-] */
  readonly wrong: number;
  /** Farthest that such a position is read from where it is. [positions] */
  readonly worstErrorPositions: number;
  /** Different words left: positions, or groups of them, that can still be told apart. [-] */
  readonly toldApart: number;
}

function withLevel(word: Word, channel: number, level: Level): Word {
  return `${word.slice(0, channel)}${level}${word.slice(channel + 1)}`;
}

function deadChannel(table: CodeTable, channel: number, level: Level): DeadChannel {
  let [right, seen, worst] = [0, 0, 0];
  const left = new Set<Word>();
  for (const [position, word] of table.words.entries()) {
    const stuck = withLevel(word, channel, level);
    left.add(stuck);
    const read = table.nextPosition(stuck, position);
    if (read === null) seen += 1;
    else if (read === position) right += 1;
    else worst = Math.max(worst, positionsApart(read, position, table.positions));
  }
  const wrong = table.positions - right - seen;
  return { channel, level, right, seen, wrong, worstErrorPositions: worst, toldApart: left.size };
}

/**
 * What one dead channel does, for every channel and every level it can be stuck at.
 *
 * A counting wheel is asked step by step, from the right position; what it makes of a whole turn is not in here.
 *
 * @returns Channel by channel, level by level. n = channels * levels
 * @check src/core/codes/properties/faults.test.ts
 */
export function deadChannels(table: CodeTable): DeadChannel[] {
  return table.channels.flatMap(({ track }, channel) =>
    Array.from({ length: table.tracks[track]!.levelCount }, (_, level) =>
      deadChannel(table, channel, level as Level),
    ),
  );
}

/** Whether some pair of positions that are not neighbours has words a number of channels apart. */
function hasStrangersAt(table: CodeTable, distance: 1 | 2): boolean {
  const levels = table.channels.map(({ track }) => table.tracks[track]!.levelCount);
  /** Words that differ in exactly `left` of the channels from `channel` on. */
  const others = (word: Word, channel: number, left: number): Word[] => {
    if (left === 0) return [word];
    return levels.slice(channel).flatMap((count, i) =>
      Array.from({ length: count }, (_, level) => withLevel(word, channel + i, level as Level))
        .filter((changed) => changed !== word)
        .flatMap((changed) => others(changed, channel + i + 1, left - 1)),
    );
  };
  return table.words.some((word, position) =>
    others(word, 0, distance).some((other) => {
      const at = table.positionOf(other);
      return at !== null && positionsApart(at, position, table.positions) > 1;
    }),
  );
}

/**
 * Fewest channels that must be misread together to show a position that is no neighbour of the true one.
 *
 * @returns 1 or more; `null` where every two positions are neighbours, or where one reading does not tell the
 *   position. [-], whole
 * @source R. W. Hamming, Bell Syst. Tech. J. 29 (1950) 147: distance of two words.
 * @check src/core/codes/properties/faults.test.ts
 */
export function strangerDistance(table: CodeTable): number | null {
  if (!table.absolute || table.positions < 4) return null;
  // Nearly every code of few channels ends here, without comparing all pairs.
  if (hasStrangersAt(table, 1)) return 1;
  if (hasStrangersAt(table, 2)) return 2;
  let least = Infinity;
  for (let a = 0; a < table.positions; a++) {
    for (let b = a + 2; b < table.positions; b++) {
      if (positionsApart(a, b, table.positions) < 2) continue;
      least = Math.min(least, wordsApart(table.words[a]!, table.words[b]!));
    }
  }
  return least;
}

/** Channels in which two words differ. */
function wordsApart(a: Word, b: Word): number {
  let apart = 0;
  for (let c = 0; c < a.length; c++) if (a[c] !== b[c]) apart += 1;
  return apart;
}
