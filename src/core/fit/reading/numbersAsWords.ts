import type { CodeTable } from '../../codes/index.ts';
import { headingOfPosition, type Instrument } from '../../instrument/index.ts';
import { turnBetween } from '../../units/index.ts';
import type { Recording, Stretch } from './recording.ts';

/** A way to turn the one number of a row back into what the inputs read. */
export interface Undoing {
  /** What the number was, in words. */
  readonly what: string;
  /** Digits of the word, or `null` where the number cannot be one. */
  digits(value: number): readonly number[] | null;
}

const bits = (value: number, width: number): number[] | null =>
  Number.isInteger(value) && value >= 0 && value < 2 ** width
    ? Array.from({ length: width }, (_, c) => Math.floor(value / 2 ** (width - 1 - c)) % 2)
    : null;

/** Gray word of a number. */
const grayed = (value: number): number => Number(BigInt(value) ^ (BigInt(value) >> 1n));

/**
 * Ways a program may have made one number of the inputs, each undone.
 *
 * Even a wrong decoding can be undone as long as it lost nothing: the words come back as the inputs had them.
 */
export function undoings(code: CodeTable, instrument: Instrument): Undoing[] {
  const width = code.channels.length;
  const headings = code.words.map((_, position) => headingOfPosition(instrument, position));
  const wordDigits = (position: number | undefined): number[] | null =>
    position === undefined || code.words[position] === undefined
      ? null
      : Array.from(code.words[position], Number);
  const nearest = (value: number): number | undefined => {
    const step = 360 / code.positions;
    const found = headings.findIndex((heading) => Math.abs(turnBetween(heading, value)) <= step / 2);
    return found < 0 ? undefined : found;
  };
  return [
    { what: 'the position of the word', digits: (value) => wordDigits(value) },
    { what: 'the word itself as a number', digits: (value) => bits(value, width) },
    {
      what: 'the word after undoing a Gray code',
      digits: (value) => (bits(value, width) ? bits(grayed(value), width) : null),
    },
    {
      what: 'the heading of the word',
      digits: (value) => (value >= 0 && value <= 360 ? wordDigits(nearest(value)) : null),
    },
  ];
}

/** Numbers that cannot be undone may be this share of all: fillers for a word that is none. [-] */
const MOST_LOST = 0.2;

/** A recording of numbers as one of bits, or `null` where too many numbers cannot be undone. */
export function undone(recording: Recording, way: Undoing, width: number): Recording | null {
  let lost = 0;
  let all = 0;
  const stretches = recording.stretches.flatMap((stretch): Stretch[] => {
    const rows = stretch.rows.map(([value]) => way.digits(value!));
    all += rows.length;
    lost += rows.filter((row) => row === null).length;
    const kept = [...rows.keys()].filter((i) => rows[i] !== null);
    return kept.length === 0
      ? []
      : [
          {
            ...stretch,
            timesMs: kept.map((i) => stretch.timesMs[i]!),
            rows: kept.map((i) => rows[i]!),
            marksDeg: kept.map((i) => stretch.marksDeg[i]!),
          },
        ];
  });
  if (lost > MOST_LOST * all) return null;
  const columns = Array.from({ length: width }, (_, c) => `digit ${c}`);
  return { ...recording, content: 'bits', columns, stretches };
}
