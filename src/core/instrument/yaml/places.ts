import type { LineCounter } from 'yaml';
import { spelt } from '../problems/words.ts';

/** Way to a value: names of fields, and indices of list items. */
export type Path = readonly (string | number)[];

/** Where a field stands in the text. [characters from the start] */
export interface Span {
  /** Where its name begins; its value for a list item. */
  readonly key: number;
  /** Where its value begins; its name when the value is a group, a list or missing. */
  readonly value: number;
}

/** Longest field path that is shown in full; the longest we know has 32 characters. */
const LONGEST_FIELD = 120;

/** `disc.bore.diameterMm`, `controller.channelPins[2]`. */
export function pathText(path: Path): string {
  return path
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`))
    .join('');
}

/** The way written as `pathText` writes it. */
export function pathFrom(text: string): Path {
  return [...text.matchAll(/\[(\d+)\]|[^.[]+|\[/g)].map(([step, index]) =>
    index === undefined ? step : Number(index),
  );
}

/** Where everything stands in one file. */
export class Places {
  readonly #spans = new Map<string, Span>();
  readonly #fileName: string;
  readonly #lines: LineCounter;

  constructor(fileName: string, lines: LineCounter) {
    this.#fileName = fileName;
    this.#lines = lines;
  }

  /** Remembers where a field stands. */
  set(path: Path, span: Span): void {
    this.#spans.set(JSON.stringify(path), span);
  }

  /** `file:line:column` of a place in the text. */
  at(offset: number): string {
    const { line, col } = this.#lines.linePos(offset);
    return `${this.#fileName}:${line}:${col}`;
  }

  /** Where a field's value, or its name, begins; of its nearest parent that is written, when it is not. [characters] */
  offsetOf(path: Path, part: keyof Span = 'value'): number {
    for (let length = path.length; length > 0; length--) {
      const span = this.#spans.get(JSON.stringify(path.slice(0, length)));
      if (span) return length === path.length ? span[part] : span.key;
    }
    return 0;
  }

  /** `file:line:column › field`, for a place that is known. */
  shown(offset: number, path: Path): string {
    if (path.length === 0) return this.at(offset);
    const field = spelt(pathText(path));
    return `${this.at(offset)} › ${field.length > LONGEST_FIELD ? `${field.slice(0, LONGEST_FIELD - 3)}...` : field}`;
  }

  /** `file:line:column › field`. */
  of(path: Path, part: keyof Span = 'value'): string {
    return this.shown(this.offsetOf(path, part), path);
  }
}
