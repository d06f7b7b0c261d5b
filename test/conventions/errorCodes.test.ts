import { describe, expect, it } from 'vitest';
import { filesBelow, sourcePaths, textOf } from '../support/sourceFiles.ts';

const CODE = /'([a-z]+(?:-[a-z]+)*\/[a-z0-9]+(?:-[a-z0-9]+)*)'/g;

/** Steps that have error codes: the pages of docs/errors. */
const steps = filesBelow('docs/errors', /[.]md$/).map((path) => path.replace(/^.*\/(.*)[.]md$/, '$1'));

function codesIn(paths: readonly string[]): Set<string> {
  const all = paths.flatMap((path) => [...textOf(path).matchAll(CODE)].map(([, code]) => code!));
  return new Set(all.filter((code) => steps.includes(code.split('/')[0]!)));
}

const thrown = codesIn(sourcePaths());
const documented = new Set(
  filesBelow('docs/errors', /[.]md$/).flatMap((path) =>
    [...textOf(path).matchAll(/^## (\S+)$/gm)].map(([, code]) => code!),
  ),
);

describe('error codes', () => {
  it('each have a heading in docs/errors', () => {
    expect([...thrown].filter((code) => !documented.has(code)).sort()).toEqual([]);
  });

  it('are no longer documented once nothing gives them', () => {
    expect([...documented].filter((code) => !thrown.has(code)).sort()).toEqual([]);
  });

  it('are each provoked by a test', () => {
    const tests = [...filesBelow('src', /[.]test[.]ts$/), ...filesBelow('test', /[.]ts$/)]
      .map(textOf)
      .join('\n');
    // A bad file of the corpus marks each fault with its code, on a line of its own.
    const marks = filesBelow('test/corpus/instrument', /[.]yaml$/)
      .map(textOf)
      .join('\n');
    const isProvoked = (code: string): boolean =>
      tests.includes(code) || new RegExp(`^#(?:<| *\\^) ${code}$`, 'm').test(marks);
    expect([...thrown].filter((code) => !isProvoked(code)).sort()).toEqual([]);
  });
});
