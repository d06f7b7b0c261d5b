import { expect, it } from 'vitest';
import { filesBelow, sourcePaths, textOf } from '../../../test/support/sourceFiles.ts';

const page = textOf('docs/errors/codes.md');
const headings = [...page.matchAll(/^## (.+)$/gm)].map(([, heading]) => heading!);

/** Problems of the step `codes` named in some files. */
function codesIn(paths: readonly string[]): Set<string> {
  return new Set(
    paths.flatMap((path) => [...textOf(path).matchAll(/'(codes\/[a-z-]+)'/g)].map(([, code]) => code!)),
  );
}

const ours = codesIn(sourcePaths('src/core/codes'));

it('every problem of a code has a heading in docs/errors/codes.md, and every heading a problem somewhere', () => {
  expect(headings).toEqual([...new Set(headings)]);
  expect([...ours].filter((code) => !headings.includes(code))).toEqual([]);
  const everywhere = codesIn(sourcePaths());
  expect(headings.filter((heading) => !everywhere.has(heading))).toEqual([]);
});

it('every problem of a code is brought about by some test', () => {
  const tested = codesIn([
    ...filesBelow('src/core/codes', /[.]test[.]ts$/),
    ...filesBelow('test', /[.]test[.]ts$/),
  ]);
  expect([...ours].filter((code) => !tested.has(code))).toEqual([]);
});
