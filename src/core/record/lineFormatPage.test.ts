import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lineCharsAtMost, lineFields, lineFlags } from './line.ts';
import { parseLine } from './parseLine.ts';
import { parseJsonLine } from './jsonLine.ts';
import { parseSentence } from './parseSentence.ts';
import { parseStatus } from './statusLine.ts';

const page = readFileSync(new URL('../../../docs/line-format.md', import.meta.url), 'utf8');

describe('docs/line-format.md', () => {
  it('shows lines that are lines', () => {
    const examples = page
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line.startsWith('vw'));
    const states = examples.filter((line) => line.startsWith('vws'));
    expect([examples.length, states.length]).toEqual([6, 2]);
    for (const example of examples) {
      const parse = states.includes(example) ? parseStatus : parseLine;
      expect(parse(example)).toMatchObject({ ok: true });
    }
  });

  it('shows a JSON line and sentences that read', () => {
    const json = page.split('\n').filter((line) => line.startsWith('{'));
    const sentences = page.split('\n').filter((line) => line.startsWith('$'));
    expect([json.length, sentences.length]).toEqual([1, 2]);
    for (const example of json) expect(parseJsonLine(example)).toMatchObject({ ok: true });
    for (const example of sentences) expect(parseSentence(example)).toMatchObject({ ok: true });
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
      expect(lineCharsAtMost(channels, counts)).toBe(93 + (String(counts).length + 2) * channels);
    }
  });
});
