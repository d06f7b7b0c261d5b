import { element, type Markup } from './markup.ts';

/**
 * A table with one line of headings.
 *
 * @param headings - Text of each column.
 * @param rows - Text or markup of each cell, as many a row as there are headings.
 */
export function table(headings: readonly string[], rows: readonly (readonly (string | Markup)[])[]): Markup {
  const head = element('tr', {}, ...headings.map((heading) => element('th', { scope: 'col' }, heading)));
  const body = rows.map((row) => element('tr', {}, ...row.map((cell) => element('td', {}, cell))));
  return element('table', {}, element('thead', {}, head), element('tbody', {}, ...body));
}
