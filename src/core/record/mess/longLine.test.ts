import { expect, it } from 'vitest';
import { LINE_BYTES_MOST, LineSplitter } from './byteLines.ts';

/** A power of two near a gigabyte. [byte] */
const GIGABYTE = 2 ** 30;

it('lets a line of a gigabyte pass without keeping it, and reads the line behind it', () => {
  const splitter = new LineSplitter();
  const piece = new Uint8Array(2 ** 20).fill(0x41);
  for (let sent = 0; sent < GIGABYTE; sent += piece.length) {
    expect(splitter.take(piece)).toEqual([]);
    if (splitter.state.rest.length > LINE_BYTES_MOST) throw new Error('the line is kept');
  }
  expect(splitter.state.lost).toBe(GIGABYTE);
  const [behind] = splitter.take(Uint8Array.from(Buffer.from('\nvw1 1\n')));
  expect(behind).toEqual({ number: 2, bytes: 'vw1 1' });
  expect(splitter.notes()).toEqual([{ kind: 'too-long', line: 1, count: 1 }]);
}, 60_000);
