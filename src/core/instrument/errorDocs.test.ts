import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const here = new URL('./', import.meta.url);
const page = readFileSync(new URL('../../../docs/errors/instrument.md', here), 'utf8');

it('every problem of the instrument file has a heading in docs/errors/instrument.md, and every heading a problem', () => {
  const sources = readdirSync(here, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .map((name) => readFileSync(new URL(name.replaceAll('\\', '/'), here), 'utf8'))
    .join('\n');
  const codes = new Set([...sources.matchAll(/'(instrument\/[a-z-]+)'/g)].map(([, code]) => code));
  const headings = [...page.matchAll(/^## (.+)$/gm)].map(([, heading]) => heading);
  expect(headings.toSorted()).toEqual([...codes].toSorted());
});
