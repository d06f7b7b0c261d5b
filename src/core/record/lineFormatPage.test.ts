import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lineCharsAtMost, lineFields, lineFlags } from './line.ts';
import { parseLine } from './parseLine.ts';

const page = readFileSync(new URL('../../../docs/line-format.md', import.meta.url), 'utf8');

describe('docs/line-format.md', () => {
  it('shows lines that are lines', () => {
    const examples = page
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line.startsWith('vw'));
    expect(examples).toHaveLength(3);
    for (const example of examples) expect(parseLine(example)).toMatchObject({ ok: true });
  });

  it('has a row for every field between tag and check value, and for every flag', () => {
    expect(page.match(/^\| \d+ \|/gm)).toHaveLength(lineFields.length + 2);
    const letters = [...page.matchAll(/^\| `([a-z])` \|/gm)].map(([, letter]) => letter);
    expect(letters).toEqual(Object.values(lineFlags));
  });

  it('gives the length of the longest line', () => {
    for (const [channels, counts] of [
      [1, 9],
      [5, 1023],
      [6, 4095],
      [12, 65_535],
    ] as const) {
      expect(lineCharsAtMost(channels, counts)).toBe(64 + (String(counts).length + 2) * channels);
    }
  });
});
