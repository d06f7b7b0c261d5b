const POINT = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;
const COMMA = /^[+-]?(\d+(,\d*)?|,\d+)$/;

/**
 * Number of a field.
 *
 * @param text - Without blanks around it.
 * @param decimalComma - Whether the comma stands for the point.
 * @returns `null` when it is none: powers of ten and thousands marks are no way a sensor writes.
 */
export function fieldNumber(text: string, decimalComma: boolean): number | null {
  if (POINT.test(text)) return Number(text);
  return decimalComma && COMMA.test(text) ? Number(text.replace(',', '.')) : null;
}

/** `25. Mar`, `3.25.` or `3/25` where a number should be, or `1E+05`: a spreadsheet's work. */
const SPREADSHEET =
  /^(\d{1,2}[./-]\s?(\d{1,2}|\p{L}{3,4})[./-]?(\d{2,4})?|\p{L}{3}[-. ]\d{2}|\d([.,]\d+)?E[+-]\d+)$/u;

/**
 * Whether a spreadsheet has made something else of a number.
 *
 * @param text - A field where a number belongs and none is.
 */
export function isSpreadsheetWork(text: string): boolean {
  return SPREADSHEET.test(text);
}

/** Ways to part the fields of a line. */
export const separators = {
  semicolon: (text: string): string[] => text.split(';').map(tidy),
  tab: (text: string): string[] => text.split('\t').map(tidy),
  comma: commaFields,
  bar: (text: string): string[] => text.split('|').map(tidy),
  blank: (text: string): string[] =>
    text
      .trim()
      .split(/ {2,}|\s+/)
      .map(tidy),
  pairs: pairFields,
} as const;
/** Name of a separator; `pairs`: a comma parts the fields and is the decimal comma too. */
export type Separator = keyof typeof separators;

function tidy(field: string): string {
  const plain = field.trim();
  return plain.startsWith('"') && plain.endsWith('"') && plain.length > 1
    ? plain.slice(1, -1).replaceAll('""', '"').trim()
    : plain;
}

/** Fields of a line of RFC 4180: quotes keep commas in. */
function commaFields(text: string): string[] {
  if (!text.includes('"')) return text.split(',').map(tidy);
  const fields: string[] = [];
  let field = '';
  let isQuoted = false;
  for (const char of text) {
    if (char === '"') isQuoted = !isQuoted;
    if (char === ',' && !isQuoted) {
      fields.push(tidy(field));
      field = '';
    } else field += char;
  }
  return [...fields, tidy(field)];
}

/** `2026-01-01 00:10,270,0,3,25`: after the time, whole part and decimals of each number in two fields. */
function pairFields(text: string): string[] {
  const [first, ...parts] = text.split(',').map(tidy) as [string, ...string[]];
  if (parts.length % 2 === 1) return [first, ...parts];
  return [first, ...parts.flatMap((part, i) => (i % 2 === 0 ? [`${part}.${parts[i + 1]}`] : []))];
}
