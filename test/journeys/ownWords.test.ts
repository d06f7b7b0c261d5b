import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

/** Reflected Gray of four bits, written down by hand. */
const GRAY_16 = '0000 0001 0011 0010 0110 0111 0101 0100 1100 1101 1111 1110 1010 1011 1001 1000'.split(' ');

describe("a disc of the maker's own words", () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeEach(() => {
    folder = ownFolder();
  });
  afterEach(() => {
    folder.end();
  });

  /** The jetty vane with 16 positions of its own words. */
  const vane = (words: string, positions = 16): string => {
    writeFileSync(join(folder.path, 'code.csv'), words);
    const path = join(folder.path, 'instrument.yaml');
    const text = textOf('examples/jetty/instrument.yaml')
      .replace(/positions: 32/, `positions: ${positions}`)
      .replace(/accuracyDeg: 10/, 'accuracyDeg: 15')
      .replace(/code: reflected-gray/, 'code: own-words\n  codeFile: code.csv');
    writeFileSync(path, text);
    return path;
  };

  it('proves and is named for what it is', () => {
    const { exit, out } = vanewright('prove', vane(`${GRAY_16.join('\n')}\n`));
    expect(exit).toBe(0);
    expect(out).toContain('own-words, which is reflected Gray');
  });

  it('is refused at the line that repeats a word', () => {
    const { exit, err } = vanewright('prove', vane([...GRAY_16.slice(0, 15), '0000'].join('\n')));
    expect([exit, err]).toEqual([2, expect.stringContaining('codes/word-repeats')]);
    expect(err).toMatch(/code\.csv:16/);
  });

  it('is refused where the count differs, at the count', () => {
    const { exit, err } = vanewright('prove', vane(GRAY_16.join('\n'), 18));
    expect([exit, err]).toEqual([2, expect.stringContaining('codes/count-differs')]);
    expect(err).toMatch(/instrument\.yaml:\d+:\d+ › need\.positions/);
  });

  it('is made with the words beside the drawing, and these read back', () => {
    const out = join(folder.path, 'out');
    expect(vanewright('make', vane(GRAY_16.join('\n')), '--out', out, '--only', 'disc').exit).toBe(0);
    const again = join(folder.path, 'again.yaml');
    writeFileSync(
      again,
      textOf('examples/jetty/instrument.yaml')
        .replace(/positions: 32/, 'positions: 16')
        .replace(/accuracyDeg: 10/, 'accuracyDeg: 15')
        .replace(/code: reflected-gray/, 'code: own-words\n  codeFile: out/code.json'),
    );
    expect(vanewright('prove', again).exit).toBe(0);
  });
});
