import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VanewrightError, type Problem } from '../error/index.ts';
import { readInstrument } from './index.ts';

const folder = new URL('../../../test/corpus/instrument/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

/** What the marks in a file say must be told: `line:column code`, from top to bottom. */
function marked(text: string): string[] {
  let line = 0;
  const found: { line: number; column: number; code: string }[] = [];
  for (const [i, row] of text.split('\n').entries()) {
    const mark = /^#(?:<|( *)\^) (\S+)$/.exec(row);
    if (!mark) line = i + 1;
    else found.push({ line, column: row[1] === '<' ? 1 : mark[1]!.length + 2, code: mark[2]! });
  }
  return found.map((mark) => `${mark.line}:${mark.column} ${mark.code}`);
}

/** The problems of a file that must be refused. */
function problemsOf(text: string, fileName: string): readonly Problem[] {
  try {
    readInstrument(text, fileName);
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
  return [];
}

describe('a file that must be refused', () => {
  it.each(files)('tells every problem of %s, at its line and column, and no other', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const expected = marked(text);
    expect(expected.length, 'the file marks no problem').toBeGreaterThan(0);
    const told = problemsOf(text, name).map(
      ({ code, where }) => `${/^[^:]+:(\d+:\d+)/.exec(where)![1]!} ${code}`,
    );
    expect(told).toEqual(expected);
  });

  it.each(files)('tells every problem of %s in five whole answers', (name) => {
    for (const problem of problemsOf(readFileSync(new URL(name, folder), 'utf8'), name)) {
      for (const answer of ['what', 'where', 'got', 'allowed', 'fix'] as const) {
        expect(problem[answer], `${answer} of ${problem.code}`).toMatch(/\S/);
        expect(problem[answer]).not.toMatch(/undefined|\[object|\n/);
      }
      expect(problem.where.startsWith(`${name}:`)).toBe(true);
    }
  });
});
