export { csvText } from './csv.ts';
export { element, escapeText, joined, type Attribute, type Markup } from './markup.ts';
export { table } from './table.ts';
