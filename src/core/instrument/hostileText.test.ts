import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { VanewrightError, type Problem } from '../error/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument, startingFile } from './index.ts';

const MIB = 1_048_576;

/** The problems of a text; none when it reads. Anything thrown but a VanewrightError fails the test. */
function problemsOf(text: string): readonly Problem[] {
  try {
    readInstrument(text, 'f.yaml');
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
  return [];
}

describe('a file made to hurt the reader', () => {
  it.each([
    ['brackets never closed', '['.repeat(MIB), 'instrument/too-deep'],
    ['braces never closed', '{a: '.repeat(MIB / 4), 'instrument/too-deep'],
    ['lists in lists on one line', '- '.repeat(MIB / 2), 'instrument/too-deep'],
    ['names of names', '? '.repeat(MIB / 2), 'instrument/too-deep'],
    [
      'groups in groups',
      Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      'instrument/too-deep',
    ],
    [
      'a hundred thousand fields',
      Array.from({ length: 100_000 }, (_, i) => `a${i}: 1`).join('\n'),
      'instrument/too-many-values',
    ],
    ['a list of half a million', `[${'1,'.repeat(MIB / 2 - 8)}]`, 'instrument/too-many-values'],
    ['lines without end', '\n'.repeat(MIB), 'instrument/too-many-values'],
    ['anchors without end', '&a '.repeat(MIB / 3), 'instrument/too-many-values'],
    ['documents without end', '---\n'.repeat(MIB / 4), 'instrument/too-many-values'],
    ['one word of a megabyte', 'a'.repeat(MIB), 'instrument/value-too-long'],
    ['half a million bad escapes', `"${'\\q'.repeat(MIB / 2 - 1)}"`, 'instrument/value-too-long'],
    ['an indentation of a megabyte', ' '.repeat(MIB), 'instrument/value-too-long'],
    ['one character too many', `#${' '.repeat(MIB)}`, 'instrument/too-large'],
    ['half a megabyte in letters of three bytes', `#${'風'.repeat(MIB / 2)}`, 'instrument/too-large'],
    ['ten megabytes', 'vanewright: 1\n'.repeat(750_000), 'instrument/too-large'],
  ])('is refused for %s', (_, text, code) => {
    expect(problemsOf(text).map((problem) => problem.code)).toEqual([code]);
  });

  it('may hold a mebibyte, not a byte more', () => {
    expect(INSTRUMENT_FILE_MOST_BYTES).toBe(MIB);
    const [atLimit] = problemsOf(`#${'é'.repeat(MIB / 2 - 1)}\n`);
    expect(atLimit!.code).toBe('instrument/value-too-long');
    const [beyond] = problemsOf(`#${'é'.repeat(MIB / 2 - 1)}\n\n`);
    expect(beyond).toMatchObject({ code: 'instrument/too-large', got: `${MIB + 1} bytes` });
  });

  it.each([
    ['a NUL', 'vanewright: 1\nname: a\0b', '2:8', 'character number 0'],
    ['an escape character', 'vanewright: 1\nname: \x1b[31m', '2:7', 'character number 27'],
    ['text in UTF-16, decoded as UTF-8', 'v\0a\0n\0', '1:2', 'character number 0'],
    ['a letter of another encoding', 'vanewright: 1\nname: caf\ufffd', '2:10', 'bytes that are not UTF-8'],
  ])('is refused for %s', (_, text, place, got) => {
    expect(problemsOf(text)).toMatchObject([{ code: 'instrument/not-text', where: `f.yaml:${place}`, got }]);
  });

  it('tells the first 50 of 300 problems in full, and how many more there are', () => {
    const fields = Array.from({ length: 300 }, (_, i) => `x${i}: 1`).join('\n');
    const problems = problemsOf(
      `vanewright: 1\nname: a\nneed: {positions: 32}\ndisc: {diameterMm: 84, process: {kind: fdm}}\n${fields}`,
    );
    expect(problems).toHaveLength(51);
    expect(problems[49]!.where).toBe('f.yaml:54:1 › x49');
    expect(problems[50]).toMatchObject({
      code: 'instrument/more-problems',
      where: 'f.yaml:55:1 › x50',
      got: '300 problems',
    });
  });

  it('tells the first 50 of a thousand slips of YAML too', () => {
    const problems = problemsOf('"\\q": 1\n'.repeat(1000));
    expect(problems).toHaveLength(51);
    expect(problems[49]).toMatchObject({ code: 'instrument/not-yaml', where: 'f.yaml:50:2' });
    expect(problems[50]!.got).toBe('1000 problems');
  });

  it('never names a path, a line or a sign that would break a line of output', () => {
    const [problem] = problemsOf('vanewright: 1\n"a\\nb\\e\\u202e": "c\\rd"\n').filter(({ code }) =>
      code.endsWith('unknown-field'),
    );
    expect(`${problem!.where}${problem!.got}`).not.toMatch(/[\u0000-\u001f\u202e]/);
    expect(problem!.got).toContain('a\\u000ab');
  });

  it('shows a file name with a line break on one line', () => {
    expect(() => readInstrument('', 'a\nb.yaml')).toThrow('a\\u000ab.yaml:1:1');
  });
});

describe('any text at all', () => {
  const signs = fc.constantFrom(
    ...[
      'vanewright: 1\n',
      'disc:\n',
      '  diameterMm: 90\n',
      'name: ',
      'need: {positions: 32}\n',
      'process: {kind: fdm}',
      '{',
      '}',
      '[',
      ']',
    ],
    ...[
      '- ',
      '? ',
      ': ',
      '\n',
      '  ',
      '\t',
      '"',
      "'",
      '&a ',
      '*a',
      '!!int ',
      '!<',
      '|\n',
      '>-\n',
      '---\n',
      '...\n',
      '%YAML 1.1\n',
      '#',
    ],
    ...[
      '<<: ',
      '__proto__: ',
      'toString',
      '.nan',
      '1e999',
      '0x1f',
      '80 mm',
      '80,5',
      '\r\n',
      '\r',
      '\ufeff',
      '\ud800',
      '\\',
      ', ',
      '=',
      '`',
      '@',
    ],
  );

  it('reads, or is refused in whole answers, and nothing else', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(signs).map((parts) => parts.join('')),
        ),
        (text) => {
          for (const { where, what, got, allowed, fix } of problemsOf(text)) {
            expect([where, what, got, allowed, fix].every((answer) => answer.trim() !== '')).toBe(true);
          }
        },
      ),
      { seed: 20240611, numRuns: 3000 },
    );
  });

  it('put anywhere into a good file reads, or is refused in whole answers', () => {
    const good = startingFile('jetty');
    fc.assert(
      fc.property(fc.nat(good.length), fc.nat(30), fc.array(signs, { maxLength: 4 }), (at, cut, parts) => {
        for (const { where } of problemsOf(good.slice(0, at) + parts.join('') + good.slice(at + cut))) {
          expect(where).toMatch(/^f\.yaml:\d+:\d+( › .+)?$/);
        }
      }),
      { seed: 20240612, numRuns: 800 },
    );
  });

  it('as the value of any field reads, or names that field', () => {
    const value = fc.jsonValue({ maxDepth: 2 });
    const path = fc.constantFrom('name', 'need', 'disc', 'head', 'circuit', 'controller', 'cups', 'site');
    const base = { need: { positions: 32 }, disc: { diameterMm: 84, process: { kind: 'fdm' } } };
    fc.assert(
      fc.property(path, value, (section, junk) => {
        const file = { vanewright: 1, name: 'a', ...base, [section]: junk };
        for (const { where } of problemsOf(JSON.stringify(file))) expect(where).toContain(`› ${section}`);
      }),
      { seed: 20240613, numRuns: 800 },
    );
  });
});
