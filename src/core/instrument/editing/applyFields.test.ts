import { describe, expect, it } from 'vitest';
import { applyFields, readInstrument, startingFile, type FieldEdits } from '../index.ts';

const start = startingFile('jetty');
const readBack = (text: string) => readInstrument(text, 'f.yaml').instrument;
const entry = (offsetDeg: number) => ({
  since: '2024-05-17T10:30:00.000Z',
  offsetDeg,
  sigmaDeg: 1.1,
  by: 'display showed 350° where "the mill" stands at 5°',
});
const north = (offsetDeg: number): FieldEdits => ({
  section: 'site',
  set: { northOffsetDeg: offsetDeg },
  append: { list: 'northHistory', entry: entry(offsetDeg) },
});

describe('fields written into a file', () => {
  it('take the place of the old value and leave every other line as it was', () => {
    const written = applyFields(start, 'f.yaml', north(12.5));
    const lines = (text: string) => text.split('\n');
    const was = lines(start).filter((line) => !lines(written).includes(line));
    expect(was).toEqual(lines(start).filter((line) => line.includes('northOffsetDeg: 0')));
    expect(written).toContain("northOffsetDeg: 12.5 # heading shown when the index mark is at the head's");
    expect(readBack(written).site.northOffsetDeg).toBe(12.5);
    expect(readBack(written).site.northHistory).toEqual([entry(12.5)]);
  });

  const block = `site:\n  northHistory: # of all years\n    - ${JSON.stringify(entry(1))} # the first\n# end\n`;
  const body = start.slice(0, start.indexOf('site:'));
  it.each([
    ['a list of its own lines', body + block],
    [
      'a list on one line',
      `${body}site: { northHistory: [${JSON.stringify(entry(1))}], mastHeightM: 4 } # here\n`,
    ],
    ['line ends of another system', (body + block).replaceAll('\n', '\r\n')],
    ['a byte order mark', `\ufeff${body}${block}`],
    [
      'JSON',
      JSON.stringify({
        vanewright: 1,
        name: 'j',
        need: { positions: 4 },
        disc: { diameterMm: 84, process: { kind: 'fdm' } },
        site: { northHistory: [entry(1)] },
      }),
    ],
  ])('are added behind what is there: %s', (_, text) => {
    const written = applyFields(applyFields(text, 'f.yaml', north(2)), 'f.yaml', north(3));
    const site = { ...readBack(text).site, northOffsetDeg: 3, northHistory: [entry(1), entry(2), entry(3)] };
    expect(readBack(written)).toEqual({ ...readBack(text), site });
    for (const comment of text.match(/# [a-z ]+/g) ?? []) expect(written).toContain(comment);
  });

  it.each([
    ['missing', body],
    ['an empty group', `${body}site: {}\n`],
    ['a value not yet written', `${body}site:\n  northOffsetDeg: 0\n  northHistory: []\n`],
  ])('make a section that was %s', (_, text) => {
    const { site } = readBack(applyFields(text, 'f.yaml', north(7)));
    expect([site.northOffsetDeg, site.northHistory]).toEqual([7, [entry(7)]]);
  });

  it('give cups to an instrument that had none', () => {
    const edits: FieldEdits = {
      section: 'cups',
      set: { pulsesPerTurn: 2, runPerPulseM: 0.75 },
      append: null,
    };
    expect(readBack(applyFields(start, 'f.yaml', edits)).cups).toMatchObject({
      pulsesPerTurn: 2,
      runPerPulseM: 0.75,
    });
  });

  it('are refused out of range, so that a file is never spoilt', () => {
    expect(() => applyFields(start, 'f.yaml', north(360))).toThrow('instrument/');
    expect(() => applyFields('name: x', 'f.yaml', north(1))).toThrow('instrument/');
  });
});
