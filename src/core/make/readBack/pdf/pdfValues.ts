/** A value of a PDF as far as drawings need it; names keep their `/`, words and strings are plain text. */
export type PdfValue = number | string | PdfRef | readonly PdfValue[] | PdfDict;

/** Refers to an object of the file by its number. */
export interface PdfRef {
  readonly ref: number;
}

/** A dictionary, its keys with their `/`. */
export type PdfDict = ReadonlyMap<string, PdfValue>;

const SPACE = /(?:[\s\0]|%[^\r\n]*)*/y;
const REF = /(\d+)\s+\d+\s+R\b/y;
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)/y;
const NAME = /\/[^\s\0()<>[\]{}/%]*/y;
const WORD = /[^\s\0()<>[\]{}/%]+/y;

/** Goes through the text of a PDF value by value. @source ISO 32000-1, 7.2 and 7.3 */
export class PdfWalk {
  readonly text: string;
  at: number;

  constructor(text: string, at = 0) {
    this.text = text;
    this.at = at;
  }

  /** What a pattern matches here, or `null`; goes past it. */
  take(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found) this.at = pattern.lastIndex;
    return found;
  }

  /** The next value, or `null` at the end of the text or of what encloses it. */
  next(): PdfValue | null {
    this.take(SPACE);
    const { text, at } = this;
    if (text.startsWith('<<', at)) return this.#dict();
    if (text[at] === '[') return this.#list();
    if (text[at] === '(') return this.#string();
    if (text[at] === '<') return this.take(/<[^>]*>/y)?.[0] ?? null;
    const ref = this.take(REF);
    if (ref) return { ref: Number(ref[1]) };
    const number = this.take(NUMBER);
    if (number) return Number(number[0]);
    return (this.take(NAME) ?? this.take(WORD))?.[0] ?? null;
  }

  #dict(): PdfDict {
    this.at += 2;
    const values: PdfValue[] = [];
    for (let value = this.next(); value !== null; value = this.next()) values.push(value);
    this.at += 2;
    return new Map(values.flatMap((key, i) => (i % 2 === 0 ? [[String(key), values[i + 1]!] as const] : [])));
  }

  #list(): PdfValue[] {
    this.at++;
    const values: PdfValue[] = [];
    for (let value = this.next(); value !== null; value = this.next()) values.push(value);
    this.at++;
    return values;
  }

  #string(): string {
    const from = this.at;
    let depth = 0;
    do {
      const letter = this.text[this.at++];
      if (letter === undefined) break;
      if (letter === '\\') this.at++;
      if (letter === '(') depth++;
      if (letter === ')') depth--;
    } while (depth > 0);
    return this.text.slice(from, this.at);
  }
}
