import { BrokenPromise } from '../../error/index.ts';
import type { CodeBuild, CodeFamily, CodeOptions } from '../family.ts';
import type { Level } from '../model.ts';
import { trackFromCells } from '../track.ts';
import { tracksFor } from '../wordTracks.ts';
import { exactChannels } from './refusals.ts';

/**
 * Taps of a shift register of n stages that runs through all 2^n - 1 words: cell k is the XOR of the cells k - tap.
 *
 * @source primitive polynomials over two elements, one for each degree, as tabled in many books; the period of every row
 *   is counted in test/published/shift-register.
 */
export const SHIFT_REGISTER_TAPS: Readonly<Record<number, readonly number[]>> = {
  2: [2, 1],
  3: [3, 2],
  4: [4, 3],
  5: [5, 3],
  6: [6, 5],
  7: [7, 6],
  8: [8, 6, 5, 4],
  9: [9, 5],
  10: [10, 7],
  11: [11, 9],
  12: [12, 11, 10, 4],
};

/** One period of the longest sequence of a shift register, begun with all ones. n = 2^channels - 1 */
function longestSequence(channels: number): Level[] {
  const taps = SHIFT_REGISTER_TAPS[channels]!;
  const cells: Level[] = Array.from({ length: channels }, () => 1);
  while (cells.length < 2 ** channels - 1) {
    cells.push(taps.reduce((sum, tap) => sum ^ cells[cells.length - tap]!, 0) as Level);
  }
  return cells;
}

/** Window of a cyclic sequence as a number, its first cell highest. */
function windowAt(cells: readonly Level[], start: number, channels: number): number {
  let word = 0;
  for (let c = 0; c < channels; c++) word = (word << 1) | cells[(start + c) % cells.length]!;
  return word;
}

/**
 * A cyclic sequence of any length in which every window of n cells shows once.
 *
 * The full length of 2^n takes the longest sequence with one zero more in its longest run of zeros. A shorter length
 * leaves out a stretch between two windows that differ in their first cell only: what follows one then follows the other.
 *
 * @param positions - N. [-], 2..4096
 * @source derived; that every length exists: A. Lempel, IEEE Trans. Comput. C-20 (1971) 1204.
 * @check test/published/shift-register
 */
export function windowSequence(positions: number): Level[] {
  const channels = tracksFor(positions);
  if (channels === 1) return [0, 1];
  const cells = longestSequence(channels);
  const spare = cells.length - positions;
  if (spare === 0) return cells;
  const windows = cells.map((_, start) => windowAt(cells, start, channels));
  if (spare < 0) {
    const zeros = windows.indexOf(1); // n - 1 zeros and a one
    return [...cells.slice(0, zeros), 0, ...cells.slice(zeros)];
  }
  const firstCell = 1 << (channels - 1);
  const start = windows.findIndex((word, k) => (word ^ windows[(k + spare) % cells.length]!) === firstCell);
  if (start === -1)
    throw new BrokenPromise(`No window of ${channels} cells can be cut ${spare} cells short.`);
  // The cell at start is followed by the same cells as the one at start + spare: leave out what lies between.
  return Array.from({ length: positions }, (_, k) => cells[(start + spare + 1 + k) % cells.length]!);
}

/** The clock track is lit over the middle half of every step. */
const CLOCK_FROM = 0.25;
const CLOCK_TO = 0.75;

/** A comb that reads 1 only well inside a step. */
function clockTrack(positions: number): CodeBuild['tracks'][number] {
  const starts = Array.from({ length: positions }, (_, k) => [k + CLOCK_FROM, k + CLOCK_TO]).flat();
  return {
    levelCount: 2,
    startsDeg: starts.map((start) => (start * 360) / positions),
    levels: starts.map((_, i) => (i % 2 === 0 ? 1 : 0)),
  };
}

function build(positions: number, { clockTrack: hasClock = true }: CodeOptions): CodeBuild {
  const channels = tracksFor(positions);
  const data = trackFromCells(windowSequence(positions));
  const heads = Array.from({ length: channels }, (_, c) => ({ track: 0, angleDeg: (c * 360) / positions }));
  if (!hasClock) return { tracks: [data], channels: heads };
  return {
    tracks: [data, clockTrack(positions)],
    channels: [...heads, { track: 1, angleDeg: 0 }],
    strobe: { channel: channels, level: 1 },
  };
}

/**
 * One track read through a window of n neighbouring cells, every window different: any count, odd ones too.
 *
 * Several channels change at once, so the word is read only in the middle of a step, where the clock track is lit.
 *
 * @source E. M. Petriu, Electron. Lett. 21 (1985) 215; J. M. Fuertes, B. Balle, E. Ventura, IEEE Trans. Instrum. Meas. 57
 *   (2008) 915 for prescribed lengths (abstracts).
 * @check test/published/shift-register
 */
export const shiftRegister: CodeFamily = {
  name: 'shift-register',
  title: 'shift register',
  options: ['channels', 'clockTrack'],
  refusal: (positions, { channels }) => exactChannels(positions, channels),
  build,
};
