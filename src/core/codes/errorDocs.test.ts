import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const here = new URL('./', import.meta.url);
const page = readFileSync(new URL('../../../docs/errors/codes.md', here), 'utf8');

/** All text of this step, tests or no tests. */
function textOf(isWanted: (name: string) => boolean): string {
  return readdirSync(here, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && isWanted(name))
    .map((name) => readFileSync(new URL(name.replaceAll('\\', '/'), here), 'utf8'))
    .join('\n');
}

const codesIn = (text: string): string[] => [
  ...new Set([...text.matchAll(/'(codes\/[a-z-]+)'/g)].map(([, code]) => code!)),
];

const sources = codesIn(textOf((name) => !name.endsWith('.test.ts')));

it('every problem of a code has a heading in docs/errors/codes.md, and every heading a problem', () => {
  const headings = [...page.matchAll(/^## (.+)$/gm)].map(([, heading]) => heading);
  expect(headings.toSorted()).toEqual(sources.toSorted());
});

it('every problem of a code is brought about by some test', () => {
  const tested = codesIn(textOf((name) => name.endsWith('.test.ts')));
  const published = new URL('../../../test/published/', here);
  const elsewhere = readdirSync(published, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => readFileSync(new URL(name.replaceAll('\\', '/'), published), 'utf8'));
  const known = new Set([...tested, ...codesIn(elsewhere.join('\n'))]);
  expect(sources.filter((code) => !known.has(code))).toEqual([]);
});
