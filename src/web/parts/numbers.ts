/** Numbers as the reader writes them: the decimal sign of the browser's language. */
const locale = typeof navigator === 'undefined' ? 'en' : navigator.language;

/** A number with at most so many decimals. */
export function shownNumber(value: number, decimals = 2): string {
  return value.toLocaleString(locale, { maximumFractionDigits: decimals });
}

/** A number as it stands in a field: every digit, no grouping. */
export function typedNumber(value: number): string {
  return value.toLocaleString(locale, { maximumFractionDigits: 12, useGrouping: false });
}

/** Degrees with their sign. */
export function shownDegrees(value: number, decimals = 2): string {
  return `${shownNumber(value, decimals)}°`;
}

/**
 * The number that someone typed, with a decimal comma or point.
 *
 * @returns `null` where it is none.
 */
export function readNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(',', '.');
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null;
}
