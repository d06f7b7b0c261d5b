import { element, joined, table, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Review } from '../review.ts';
import { definitions, type DefinitionId } from './definitions.ts';
import { findingsParts } from './findingsSection.ts';
import { reviewPictures, type ReviewPicture } from './reviewPictures.ts';
import type { ReviewTable } from './reviewTable.ts';
import { reviewTables } from './reviewTables.ts';
import { reviewStyle } from './style.ts';
import { headingText, instantText, percentText } from './words.ts';

/** Links to what explains figures: one click away from each. */
function explained(ids: readonly DefinitionId[]): Markup {
  const links = ids.flatMap((id, i) => [
    ...(i > 0 ? [', '] : []),
    element('a', { href: `#${definitions[id].id}` }, definitions[id].term.toLowerCase()),
  ]);
  return element('p', { class: 'faint' }, 'What it means, and who says so: ', ...links, '.');
}

/** The answer in a few sentences. */
export function answerOf({ whole, coverage, rose, findings }: Review): string[] {
  const sentences: string[] = [];
  if (findings.length > 0) {
    const which = findings.length === 1 ? '1 fault' : `${findings.length} faults`;
    sentences.push(`The record shows ${which}: ${findings.map(({ title }) => title).join('; ')}.`);
  }
  if (whole.headingDeg !== null) {
    const within = whole.headingWithinDeg === null ? '' : ` ± ${showNumber(whole.headingWithinDeg, 0)}°`;
    sentences.push(`The wind came from ${headingText(whole.headingDeg)}${within} on average.`);
  } else if (rose?.calm) {
    sentences.push(
      rose.calm.share === 1
        ? 'Every sample was calm, so there is no direction.'
        : 'The directions cancel out, so there is no mean.',
    );
  } else sentences.push('No sample has a direction that can be used.');
  sentences.push(
    whole.speed
      ? `Its mean speed was ${showNumber(whole.speed.mean, 2)} m/s, and ${percentText(whole.calmShare!.mean)} of the samples were calm.`
      : 'The record holds no speed, so nobody knows what was calm.',
  );
  sentences.push(`${percentText(coverage.whole.heading)} of the time has a usable direction.`);
  if (!coverage.hasCompleteYear)
    sentences.push('The record is too short or has too many gaps to stand for a year.');
  return sentences;
}

/** Text of a cell; short ones stay on one line. */
function cellOf(text: string): string | Markup {
  return text.length <= 24 && text.includes(' ') ? element('span', { class: 'short' }, text) : text;
}

function tableSection({ title, headings, rows, defined, name, isLong }: ReviewTable): Markup[] {
  if (isLong) return [];
  const shown =
    rows.length > 0
      ? element(
          'div',
          { class: 'scroll' },
          table(
            headings,
            rows.map((row) => row.map(cellOf)),
          ),
        )
      : element('p', {}, 'Nothing to list.');
  return [element('section', { id: `table-${name}` }, element('h2', {}, title), shown, explained(defined))];
}

function pictureSection({ caption, drawing, defined, name }: ReviewPicture): Markup {
  return element(
    'section',
    { id: `picture-${name}` },
    element('figure', {}, drawing, element('figcaption', {}, caption)),
    explained(defined),
  );
}

function definitionList(): Markup {
  const entries = Object.values(definitions).flatMap(({ id, term, meaning, source }) => [
    element('dt', { id }, term),
    element('dd', {}, meaning),
    element('dd', { class: 'faint' }, `Source: ${source}`),
  ]);
  return element('section', {}, element('h2', {}, 'Definitions and sources'), element('dl', {}, ...entries));
}

function body(review: Review): Markup {
  const { name, station, samples, firstMs, lastMs, intervalMs, fromMs, untilMs } = review;
  const [whole, ...tables] = reviewTables(review);
  const pictures = reviewPictures(review);
  const shown = new Set(['faults', ...pictures.map(({ name: picture }) => picture)]);
  return joined([
    element('h1', {}, `Review: ${name}`),
    element(
      'p',
      { class: 'faint' },
      `Station ${station}, ${instantText(fromMs)} to ${instantText(untilMs)}; ${samples} samples, one every ${showNumber(intervalMs / 1000, 3)} s, the first ${instantText(firstMs)}, the last ${instantText(lastMs)}.`,
    ),
    element('p', { class: 'answer' }, answerOf(review).join(' ')),
    element(
      'section',
      { id: 'table-faults' },
      element('h2', {}, 'What is wrong with the instrument'),
      ...findingsParts(review.findings),
      explained(['faults']),
    ),
    ...tableSection(whole!),
    ...pictures.flatMap((one) => [
      pictureSection(one),
      ...tables.filter(({ name }) => name === one.name).flatMap(tableSection),
    ]),
    ...tables.filter(({ name }) => !shown.has(name)).flatMap(tableSection),
    definitionList(),
  ]);
}

/** The review as one page of HTML that needs nothing beside it. */
export function reviewPage(review: Review): string {
  const head = joined([
    { html: '<meta charset="utf-8">' },
    { html: '<meta name="viewport" content="width=device-width, initial-scale=1">' },
    element('title', {}, `Review: ${review.name}`),
    { html: `<style>${reviewStyle}</style>` },
  ]);
  const page = element(
    'html',
    { lang: 'en' },
    element('head', {}, head),
    element('body', {}, element('main', {}, body(review))),
  );
  return `<!doctype html>\n${page.html}\n`;
}
