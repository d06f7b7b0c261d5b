import type { Level } from '../../codes/index.ts';

/** A change of what a channel reads while one mark gives way to another. */
export interface MarkChange {
  /** Share of the spot on the mark that comes. [-], 0..1 */
  readonly share: number;
  /** Level read from there on. */
  readonly level: Level;
}

/** How one channel tells three marks apart. What it rejects leaves the channel as it was. */
export interface MarkReader {
  /**
   * What a spot shows that lies on several marks at once.
   *
   * @param shares - Share of the spot on marks of level 0, 1 and 2, adding up to 1. [-], n = 3
   * @returns The level, or `null` where the reading is rejected.
   */
  judge(shares: readonly number[]): Level | null;
  /** Changes in order while the spot goes from a mark of one level to one of another, in closed form. */
  changes(from: Level, to: Level): readonly MarkChange[];
}

/** Shares of a spot wholly on one mark. */
export function pureShares(level: Level): number[] {
  return [0, 1, 2].map((other) => (other === level ? 1 : 0));
}

/** A reader that works out the changes of each pair of levels once. */
export function rememberedChanges(reader: MarkReader): MarkReader {
  const known: (readonly MarkChange[] | undefined)[] = new Array(9);
  return {
    judge: reader.judge,
    changes: (from, to) => (known[3 * from + to] ??= reader.changes(from, to)),
  };
}
