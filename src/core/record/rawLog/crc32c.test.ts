import { describe, expect, it } from 'vitest';
import { crc32c } from './crc32c.ts';

const run = (length: number, value: (i: number) => number): Uint8Array =>
  Uint8Array.from({ length }, (_, i) => value(i));

describe('the check of the raw log', () => {
  // RFC 3720, appendix B.4, printed with the lowest byte first.
  it.each([
    ['32 bytes of zeros', run(32, () => 0), 0x8a9136aa],
    ['32 bytes of ones', run(32, () => 255), 0x62a8ab43],
    ['32 rising bytes', run(32, (i) => i), 0x46dd794e],
    ['32 falling bytes', run(32, (i) => 31 - i), 0x113fdb5c],
  ])('is the printed one for %s', (_, bytes, printed) => {
    expect(crc32c(bytes)).toBe(printed);
  });

  it('gives the usual value for the digits 1 to 9', () => {
    expect(crc32c(new Uint8Array([...'123456789'].map((c) => c.charCodeAt(0))))).toBe(0xe3069283);
  });

  it('goes on from piece to piece, wherever the cut is', () => {
    const bytes = run(61, (i) => (i * 37) % 251);
    for (let cut = 0; cut <= 61; cut++) {
      expect(crc32c(bytes.subarray(cut), crc32c(bytes.subarray(0, cut)))).toBe(crc32c(bytes));
    }
  });
});
