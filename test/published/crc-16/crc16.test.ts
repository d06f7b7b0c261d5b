import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { crc16 } from '../../../src/core/record/index.ts';

const rows = readFileSync(new URL('./vectors.csv', import.meta.url), 'utf8')
  .split('\n')
  .slice(1, -1);
const vectors = rows.map((row) => [row.slice(5), parseInt(row.slice(0, 4), 16)] as const);

it('gives 29B1 for 123456789, as the catalogue prints', () => {
  expect(crc16('123456789')).toBe(0x29b1);
});

it.each(vectors)('agrees with a second implementation on "%s"', (text, check) => {
  expect(crc16(text)).toBe(check);
});
