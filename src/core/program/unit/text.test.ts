import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { braced, inertWords } from './text.ts';

describe('inertWords', () => {
  it('keeps a name that means no harm', () => {
    expect(inertWords("Boathouse jetty, pier 2 (west) & Anna's")).toBe(
      "Boathouse jetty, pier 2 (west) & Anna's",
    );
    expect(inertWords('Čšž Ελλάς 風見 ä')).toBe('Čšž Ελλάς 風見 ä');
  });

  it('leaves nothing that could end a comment, join lines or turn the text around', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(
            fc.integer({ min: 0, max: 0x10ffff }).map((point) => String.fromCodePoint(point)),
            fc.constantFrom('\\', '*/', '??/', '\n', '\r', '\u2028', '\u202e'),
          ),
        ),
        (pieces) => {
          const inert = inertWords(pieces.join(''));
          expect(inert).not.toMatch(/[\\/*?"<>#\p{C}\p{Zl}\p{Zp}]/u);
          expect(Array.from(inert).length).toBeLessThanOrEqual(72);
        },
      ),
      { seed: 20240611 },
    );
  });

  it('shows that a long name was cut', () => {
    expect(inertWords('x'.repeat(72))).toBe('x'.repeat(72));
    expect(inertWords('x'.repeat(73))).toBe(`${'x'.repeat(69)}...`);
  });
});

describe('braced', () => {
  it('breaks long lists into lines that fit, and loses nothing', () => {
    const values = Array.from({ length: 300 }, (_, i) => i * 7);
    const text = braced(values);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(96);
    expect(JSON.parse(`[${text.slice(1, -1)}]`)).toEqual(values);
  });
});
