import { positionCentreDeg, type Word } from '../../codes/index.ts';
import { turnBetween } from '../../units/index.ts';
import type { Stretch } from '../reading/recording.ts';
import { angleAfter, pointBefore, type PathPiece } from './shaftPath.ts';

/** How a reader turns rows into disc angles. */
export interface Reader {
  /** Column and thresholds of each channel, and what it says of a count: digits of a word. n = channels */
  readonly channels: readonly {
    readonly column: number;
    readonly lowCounts: number;
    readonly highCounts: number;
    readonly digitWhenHigh: '0' | '1';
  }[];
  /** Disc angle that a word stands for, `null` for one that is none. [deg] */
  angleOf(word: Word): number | null;
}

/** What a reader got wrong on the recording. */
export interface Misreads {
  /** Share of the turning during which it was off by more than a step, or read no word of the code. [-] */
  readonly misreadShare: number;
  readonly illegalShare: number;
  /** Root mean square and largest error of what it read. [deg] */
  readonly rmsDeg: number;
  readonly maxDeg: number;
}

/** Runs the reader over every sample between the first and last edge seen; angles are weighted by how far the shaft turned. */
export function misreadsOf(
  reader: Reader,
  stretches: readonly Stretch[],
  path: readonly PathPiece[],
  stepDeg: number,
): Misreads {
  let [all, wrong, illegal, square, max] = [0, 0, 0, 0, 0];
  for (const piece of path) {
    const stretch = stretches[piece.stretch]!;
    const digits = new ChannelDigits(reader);
    let last: number | null = null;
    for (const [i, row] of stretch.rows.entries()) {
      const word = digits.take(row);
      const point = pointBefore(piece, stretch.timesMs[i]!);
      if (point < 0) continue;
      const truth = angleAfter(piece, point, stretch.timesMs[i]!);
      const turned = last === null ? 0 : Math.abs(truth - last);
      last = truth;
      all += turned;
      const read = reader.angleOf(word);
      if (read === null) {
        illegal += turned;
        continue;
      }
      const error = Math.abs(turnBetween(truth, read));
      square += turned * error * error;
      if (error > stepDeg) wrong += turned;
      if (turned > 0) max = Math.max(max, error);
    }
  }
  return {
    misreadShare: all > 0 ? wrong / all : 0,
    illegalShare: all > 0 ? illegal / all : 0,
    rmsDeg: all > illegal ? Math.sqrt(square / (all - illegal)) : 0,
    maxDeg: max,
  };
}

/** Digits of each channel, carried through the hysteresis. */
class ChannelDigits {
  readonly #high: boolean[] = [];
  readonly #reader: Reader;

  constructor(reader: Reader) {
    this.#reader = reader;
  }

  take(row: readonly number[]): Word {
    return this.#reader.channels
      .map(({ column, lowCounts, highCounts, digitWhenHigh }, c) => {
        const counts = row[column]!;
        if (counts >= highCounts) this.#high[c] = true;
        else if (counts <= lowCounts) this.#high[c] = false;
        else this.#high[c] ??= counts > (lowCounts + highCounts) / 2;
        return this.#high[c] === (digitWhenHigh === '1') ? '1' : '0';
      })
      .join('');
  }
}

/** Disc angles by the drawing: the middle of each position. */
export function drawnAngles(words: readonly Word[]): (word: Word) => number | null {
  const at = new Map(words.map((word, k) => [word, positionCentreDeg(k, words.length)]));
  return (word) => at.get(word) ?? null;
}
