import type { CodeTable } from '../../src/core/codes/index.ts';
import { draws } from './handTurn.ts';

/** Bits of a recording's columns, and how they change step by step. */
export interface WalkedColumns {
  readonly columns: readonly number[];
  readonly inverted: readonly boolean[];
  readonly firstBits: number;
  readonly moves: readonly { changed: number; to: number; timeMs: number; mayJoinNext: boolean }[];
}

/** A code walked from a drawn place over some steps, seen through wires that are drawn at random. */
export function walkedCode({ words, channels }: CodeTable, steps: number, seed: number): WalkedColumns {
  const random = draws(seed);
  const order = channels.map((_, c) => ({ c, at: random() })).sort((a, b) => a.at - b.at);
  const columns = order.map(({ c }) => c);
  const inverted = columns.map(() => random() < 0.4);
  const start = Math.floor(random() * words.length);
  const way = steps < 0 ? words.length - 1 : 1;
  const bitsAt = (k: number): number =>
    columns.reduce((bits, channel, column) => {
      const isOne = (words[(start + way * k) % words.length]![channel] === '1') !== inverted[column];
      return isOne ? bits + 2 ** column : bits;
    }, 0);
  const moves = Array.from({ length: Math.abs(steps) }, (_, k) => {
    const [before, after] = [bitsAt(k), bitsAt(k + 1)];
    const changed = before ^ after;
    return { changed, to: after & changed, timeMs: 100 * k, mayJoinNext: false };
  });
  return { columns, inverted, firstBits: bitsAt(0), moves };
}
