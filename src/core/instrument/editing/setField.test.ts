import fc from 'fast-check';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { readInstrument, setField, startingFile, type FieldValue } from '../index.ts';

const start = startingFile('jetty');
const readBack = (text: string) => readInstrument(text, 'f.yaml').instrument;

/** Lines of a text that the other does not have. */
const changed = (text: string, other: string): string[] => {
  const known = new Set(other.split('\n'));
  return text.split('\n').filter((line) => !known.has(line));
};

describe('one field set in a file', () => {
  it('leaves every other line and its own comment as they were', () => {
    const written = setField(start, ['disc', 'diameterMm'], 120);
    expect(changed(written, start)).toEqual(['  diameterMm: 120']);
    expect(readBack(written).disc.diameterMm).toBe(120);
    const positions = setField(start, ['need', 'positions'], 16);
    expect(changed(positions, start)).toEqual([
      '  positions: 16 # equal steps of a turn; 32 steps are 11.25 degrees each',
    ]);
  });

  it('reaches into groups on one line and makes the groups that are missing', () => {
    expect(readBack(setField(start, ['disc', 'bore', 'diameterMm'], 6)).disc.bore).toMatchObject({
      diameterMm: 6,
    });
    const power = setField(start, ['disc', 'measured', 'holeMm'], 1);
    expect((parse(power) as { disc: { measured: unknown } }).disc.measured).toEqual({ holeMm: 1 });
    const site = setField('vanewright: 1\nname: j\n', ['site', 'mastHeightM'], 4);
    expect(parse(site)).toEqual({ vanewright: 1, name: 'j', site: { mastHeightM: 4 } });
  });

  it('puts another kind in the place of a whole group', () => {
    const laser = setField(start, ['disc', 'process'], { kind: 'laser' });
    expect(readBack(laser).disc.process.kind).toBe('laser');
    expect(laser).toContain('process: { kind: laser }');
    expect(laser).toContain('head:\n  detector:');
  });

  it('takes a field away, so that its default holds again', () => {
    const without = setField(start, ['need', 'wantedYield'], undefined);
    expect(changed(without, start)).toEqual([]);
    expect(without).not.toContain('wantedYield');
    expect(readBack(without).need.wantedYield).toBe(0.95);
    const inFlow = setField(start, ['disc', 'bore', 'acrossFlatMm'], undefined);
    expect(inFlow).toContain('bore: { shape: d, diameterMm: 5 }');
    const first = setField(start, ['disc', 'bore', 'shape'], undefined);
    expect(first).toContain('bore: { diameterMm: 5, acrossFlatMm: 4.5 }');
  });

  it('keeps what is typed although it is wrong, and quotes text that YAML would read otherwise', () => {
    expect(() => readBack(setField(start, ['disc', 'diameterMm'], -4))).toThrow('instrument/');
    const named = setField(start, ['name'], 'yes: # "no" — čš');
    expect(readBack(named).name).toBe('yes: # "no" — čš');
  });

  it.each([
    ['JSON', '{"vanewright": 1, "need": {"positions": 4}}'],
    ['JSON with an empty group', '{"vanewright": 1, "need": {}}'],
    ['one line of YAML', 'vanewright: 1\nneed: {positions: 4} # here'],
    ['line ends of another system', 'vanewright: 1\r\nneed:\r\n  positions: 4\r\n'],
    ['a byte order mark', '\ufeffvanewright: 1\nneed:\n  positions: 4\n'],
    ['a group without a value', 'vanewright: 1\nneed:\n'],
  ])('holds in %s', (_, text) => {
    const written = setField(text, ['need', 'positions'], 8);
    expect(parse(written.replace('\ufeff', ''))).toEqual({ vanewright: 1, need: { positions: 8 } });
  });

  it('leaves a text that has no fields as it is', () => {
    for (const text of ['', '- a\n- b\n', '"words"']) expect(setField(text, ['name'], 'x')).toBe(text);
    expect(setField(start, ['cups', 'pin'], undefined)).toBe(start);
  });

  it('reads back as what was set, anywhere and in any order', () => {
    const places = [
      ['name'],
      ['need', 'accuracyDeg'],
      ['disc', 'bore', 'diameterMm'],
      ['site'],
      ['head', 'light', 'kind'],
      ['x', 'y', 'z'],
    ];
    const leaf = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.string(),
      fc.boolean(),
      fc.constant(null),
    );
    const value: fc.Arbitrary<FieldValue> = fc.oneof(
      leaf,
      fc.dictionary(fc.stringMatching(/^[a-z]+$/), leaf, { minKeys: 1, maxKeys: 3 }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(...places), value), { maxLength: 6 }), (edits) => {
        let text = start;
        for (const [path, put] of edits) {
          text = setField(text, path, put);
          const read = path.reduce<unknown>(
            (group, name) => (group as Record<string, unknown> | null)?.[name],
            parse(text, { version: '1.2', schema: 'core' }),
          );
          expect(read).toEqual(put === 0 ? expect.closeTo(0) : put);
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });
});
