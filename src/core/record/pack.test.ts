import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPack, parsePack } from './pack.ts';

const records = (text: string) => {
  const parsed = parsePack(text);
  return parsed.ok ? parsed.records : parsed.refusal.code;
};

describe('a SenML pack', () => {
  it('of two values is read as RFC 8428 resolves it', () => {
    const text =
      '[{"bn":"urn:dev:ow:10e2073a01080063:","bt":1700000000,"n":"dir","u":"deg","v":225},{"n":"speed","u":"m/s","v":5.2}]';
    expect(records(text)).toEqual([
      { name: 'urn:dev:ow:10e2073a01080063:dir', unit: 'deg', value: 225, timeS: 1_700_000_000 },
      { name: 'urn:dev:ow:10e2073a01080063:speed', unit: 'm/s', value: 5.2, timeS: 1_700_000_000 },
    ]);
  });

  // RFC 8428 section 5.1.2 (first) and its resolved form in section 5.1.4 show base values like these.
  it('adds base value and base time, and takes base units', () => {
    const text =
      '[{"bn":"a:","bt":100,"bu":"A","bv":10,"bver":5,"n":"x","v":1,"t":-5},{"n":"y","u":"V","v":2,"t":3}]';
    expect(records(text)).toEqual([
      { name: 'a:x', unit: 'A', value: 11, timeS: 95 },
      { name: 'a:y', unit: 'V', value: 12, timeS: 103 },
    ]);
  });

  it('comes back as it was written', () => {
    const rows = [
      { name: 'dir', unit: 'deg', value: 225 },
      { name: 'flags', unit: null, value: 'jp' },
      { name: 'ok', unit: null, value: false },
    ];
    const named = rows.map((row) => ({ ...row, name: `jetty:${row.name}` }));
    expect(records(formatPack({ baseName: 'jetty:', timeS: null }, rows))).toEqual(
      named.map((row) => ({ ...row, timeS: null })),
    );
    expect(records(formatPack({ baseName: 'jetty:', timeS: 1_700_000_000.25 }, rows))).toEqual(
      named.map((row) => ({ ...row, timeS: 1_700_000_000.25 })),
    );
  });

  it('ignores labels it does not know, unless they must be known', () => {
    expect(records('[{"n":"a","v":1,"color":"red"}]')).toHaveLength(1);
    expect(records('[{"n":"a","v":1,"color_":"red"}]')).toBe('record/pack-value');
  });

  it.each([
    ['record/pack-foreign', ''],
    ['record/pack-foreign', '{"n":"a","v":1}'],
    ['record/pack-foreign', '[]'],
    ['record/pack-foreign', '[{"bn":"a"}]'],
    ['record/pack-foreign', `["${'x'.repeat(70_000)}"]`],
    ['record/pack-value', '[1]'],
    ['record/pack-value', '[{"n":"a","v":"1"}]'],
    ['record/pack-value', '[{"n":"a","v":1,"vs":"b"}]'],
    ['record/pack-value', '[{"n":"-a","v":1}]'],
    ['record/pack-value', '[{"n":"a b","v":1}]'],
    ['record/pack-value', '[{"v":1}]'],
    ['record/pack-value', '[{"n":"a","s":1}]'],
    ['record/pack-value', '[{"bver":11,"n":"a","v":1}]'],
  ])('is refused with %s: %s', (code, text) => {
    expect(records(text)).toBe(code);
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(records(text)).toBeDefined();
        expect(records(`[${text}]`)).toBeDefined();
      }),
      { seed: 20240611 },
    );
  });
});
