import { isDataField } from './columns.ts';
import type { TextLine } from './textLines.ts';

/** How the fields of a file's lines are parted, and how many there are. */
export interface Separation {
  readonly split: (text: string) => string[];
  /** Fields that most data lines have. [-] */
  readonly width: number;
  /** Names that stand beside each value on every line (`a0:512`), or `null`. */
  readonly labels: readonly string[] | null;
}

const tidy = (field: string): string => {
  const plain = field
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();
  return instantMs(plain) ?? plain;
};

/** ISO 8601 date and time as milliseconds, written as a number; `null` when the field is none. */
function instantMs(text: string): string | null {
  if (!/^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d([.,]\d+)?)?(Z|[+-]\d\d:?\d\d)?$/.test(text)) return null;
  const zoned = /(Z|[+-]\d\d:?\d\d)$/.test(text) ? text : `${text}Z`;
  const at = Date.parse(zoned.replace(' ', 'T').replace(',', '.'));
  return Number.isNaN(at) ? null : String(at);
}

const SPLITS: readonly ((text: string) => string[])[] = [
  (text) => text.split(';').map(tidy),
  (text) => text.split('\t').map(tidy),
  (text) => text.split(',').map(tidy),
  (text) => text.split('|').map(tidy),
  (text) => text.trim().split(/\s+/).map(tidy),
];

/** `3,25,4,10` with a comma for both: fields are pairs of whole part and decimals. */
const pairs = (text: string): string[] => {
  const parts = text.split(',').map(tidy);
  if (parts.length % 2 === 1) return parts;
  return parts.flatMap((part, i) => (i % 2 === 0 ? [`${part}.${parts[i + 1]}`] : []));
};

const LABELLED = /([A-Za-zµμ_][\w.]*)\s*[:=]\s*(\S+?)(?=[,;\s]|$)/g;

/** Values that stand behind their names on every line. */
function labelled(lines: readonly TextLine[]): Separation | null {
  const found = lines.map(({ text }) =>
    [...text.matchAll(LABELLED)].map(([, name, value]) => [name!, value!] as const),
  );
  const many = found.filter((fields) => fields.length > 0 && fields.every(([, value]) => isDataField(value)));
  if (many.length === 0 || many.length < 0.5 * lines.length) return null;
  const labels = many[many.length >> 1]!.map(([name]) => name);
  const split = (text: string): string[] => {
    const values = new Map([...text.matchAll(LABELLED)].map(([, name, value]) => [name!, value!]));
    return values.size === 0 ? [text] : labels.map((name) => values.get(name) ?? '');
  };
  return { split, width: labels.length, labels };
}

/** Enough lines to tell a layout by; a long file need not be split five times over. */
const LOOKED_AT = 2000;

/**
 * How a file's lines are parted: by the sign that leaves most lines with equally many data fields.
 *
 * @param decimalComma - The maker says that a comma is a decimal comma although columns are parted by it too.
 * @returns `null` when no sign makes data of anything.
 */
export function separationOf(all: readonly TextLine[], decimalComma: boolean): Separation | null {
  const lines = all.slice(0, LOOKED_AT);
  const byLabel = labelled(lines);
  if (byLabel) return byLabel;
  let best: (Separation & { score: number }) | null = null;
  for (const split of decimalComma ? [...SPLITS.filter((_, i) => i !== 2), pairs] : SPLITS) {
    const widths = new Map<number, number>();
    for (const { text } of lines) {
      const fields = split(text);
      if (fields.every(isDataField) && fields.some((field) => field !== '')) {
        widths.set(fields.length, (widths.get(fields.length) ?? 0) + 1);
      }
    }
    for (const [width, count] of widths) {
      // More fields are worth more: one field a line is what is left when nothing parts them.
      const score = count * (width > 1 ? 1 : 0.5);
      if (!best || score > best.score) best = { split, width, labels: null, score };
    }
  }
  return best;
}
