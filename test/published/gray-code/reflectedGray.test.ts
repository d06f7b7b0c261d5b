import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { buildCode } from '../../../src/core/codes/index.ts';

it('reads 0100 at seven and 1100 at eight', () => {
  const { words } = buildCode('reflected-gray', 16);
  expect(words[7]).toBe('0100');
  expect(words[8]).toBe('1100');
});

it('gives the printed four-bit table', () => {
  expect(buildCode('reflected-gray', 16).words).toEqual(
    '0000 0001 0011 0010 0110 0111 0101 0100 1100 1101 1111 1110 1010 1011 1001 1000'.split(' '),
  );
});

it('begins and ends ten positions as the excess code does', () => {
  const { words } = buildCode('reflected-gray', 10);
  expect([words[0], words[9]]).toEqual(['0010', '1010']);
});

it('joins every even count at the words another program found', () => {
  const [, ...rows] = readFileSync(new URL('./ends.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  expect(rows).toHaveLength(18);
  for (const row of rows) {
    const [positions, tracks, first, last] = row.split(',');
    const table = buildCode('reflected-gray', Number(positions));
    expect([String(table.channels.length), table.words[0], table.words.at(-1)], row).toEqual([
      tracks,
      first,
      last,
    ]);
  }
});
