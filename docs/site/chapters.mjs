// The pages in the order of the job; pages that no chapter names come last.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const docs = fileURLToPath(new URL('..', import.meta.url));

/** First heading of a page. */
const titleOf = (path) => /^# (.*)$/m.exec(readFileSync(`${docs}${path}.md`, 'utf8'))[1].replaceAll('`', '');

const pagesOf = (folder) =>
  readdirSync(`${docs}${folder}`)
    .filter((name) => name.endsWith('.md') && !/^(index|README)[.]md$/.test(name))
    .sort()
    .map((name) => `${folder}/${name.slice(0, -3)}`);

const howTo = pagesOf('how-to');
const number = (path) => Number(/(\d+)-/.exec(path)[1]);
const between = (first, last) => howTo.filter((path) => number(path) >= first && number(path) <= last);

const named = [
  { title: 'Begin', pages: ['index', 'tutorial', 'how-to/README', 'glossary'] },
  { title: 'Choose', pages: ['weigh', ...between(1, 5)] },
  { title: 'The code and the disc', pages: ['codes', 'disc', ...between(6, 10)] },
  { title: 'The reading head', pages: [...between(11, 16)] },
  { title: 'Prove', pages: ['proof'] },
  { title: 'Make, wire and run', pages: ['parts', 'program', 'power', ...between(17, 26)] },
  { title: 'Fit', pages: ['fit', ...between(27, 31)] },
  { title: 'Record', pages: ['record', 'line-format', ...between(32, 37)] },
  { title: 'Review and share', pages: ['review', 'faults', ...between(38, 40)] },
  {
    title: 'Reference',
    pages: ['instrument-file', 'reference/commands', 'reference/http', 'library', 'workbench', 'architecture', 'dependencies'],
  },
  { title: 'Errors and their cure', pages: pagesOf('errors') },
];

const inChapters = new Set(named.flatMap(({ pages }) => pages));
const others = ['.', 'reference']
  .flatMap(pagesOf)
  .map((path) => path.replace(/^[.]\//, ''))
  .filter((path) => !inChapters.has(path));

/** Chapters with their pages: a title, and paths without ending. */
export const chapters = [...named, ...(others.length > 0 ? [{ title: 'More', pages: others }] : [])].map(
  ({ title, pages }) => ({ title, pages: pages.map((path) => ({ path, title: titleOf(path) })) }),
);
