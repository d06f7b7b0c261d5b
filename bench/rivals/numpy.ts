import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Figures of a wind record, and how long they took. */
export interface TimedFigures {
  readonly seconds: number;
  readonly figures: readonly number[];
  readonly rose: readonly number[];
}

type Row = (row: { name: string; value: number; unit: string }) => void;

/**
 * What a numpy script makes of a file of columns. Needs python3 with numpy.
 *
 * @param script - The script beside the bench that asks.
 * @param path - Columns as 8-byte floats.
 */
export function numpyFigures(script: URL, path: string): TimedFigures {
  return JSON.parse(
    execFileSync('python3', [fileURLToPath(script), path], { encoding: 'utf8' }),
  ) as TimedFigures;
}

function furthestApart(a: readonly number[], b: readonly number[]): number {
  return a.reduce((most, value, i) => {
    const size = Math.max(Math.abs(value), Math.abs(b[i]!));
    return size === 0 ? most : Math.max(most, Math.abs(value - b[i]!) / size);
  }, 0);
}

/** Both times, their ratio, and how far the figures of the two differ at most. */
export function reportAgainstNumpy(
  report: Row,
  name: string,
  mine: TimedFigures,
  theirs: TimedFigures,
): void {
  report({ name, value: mine.seconds, unit: 's' });
  report({ name: 'the same figures by numpy', value: theirs.seconds, unit: 's' });
  report({ name: 'numpy over ours (goal 3)', value: theirs.seconds / mine.seconds, unit: 'x' });
  const apart = Math.max(furthestApart(mine.figures, theirs.figures), furthestApart(mine.rose, theirs.rose));
  report({ name: 'largest relative difference of any figure', value: apart, unit: '' });
}
