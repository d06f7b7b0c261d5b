import { describe, expect, it } from 'vitest';
import { filePlace, lineSpan } from './filePlace.ts';

describe('the place of a problem', () => {
  it('is the line and column of the instrument file', () => {
    expect(filePlace('instrument.yaml:12:3 › disc.diameterMm', 'instrument.yaml')).toEqual({
      line: 12,
      column: 3,
    });
    expect(filePlace('instrument.yaml:7:1', 'vane/instrument.yaml')).toEqual({ line: 7, column: 1 });
  });

  it('is none where another file is named, or no place at all', () => {
    expect(filePlace('words.csv:3:1', 'instrument.yaml')).toBeNull();
    expect(filePlace('need.positions', 'instrument.yaml')).toBeNull();
  });
});

describe('a line of a text', () => {
  it('is found by its number, the last one without an end too', () => {
    expect(lineSpan('a\nbcd\ne', 2)).toEqual({ from: 2, to: 5 });
    expect(lineSpan('a\nbcd\ne', 3)).toEqual({ from: 6, to: 7 });
    expect(lineSpan('a', 9)).toEqual({ from: 0, to: 1 });
  });
});
