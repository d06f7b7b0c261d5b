import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { instrumentJsonSchema, startingFile } from './index.ts';

const root = new URL('../../../', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const committed = JSON.parse(text('schema/instrument.schema.json')) as Record<string, unknown>;

const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });
ajv.addVocabulary(['unit', 'defaultRule']);
const accepts = ajv.compile(committed);
const MINIMUM = {
  vanewright: 1,
  name: 'a',
  need: { positions: 32 },
  disc: { diameterMm: 84, process: { kind: 'fdm' } },
};

/** Places and keywords of what an independent validator refuses. */
function refusals(file: unknown): string[] {
  accepts(file);
  return (accepts.errors ?? []).map(({ instancePath, keyword }) => `${instancePath} ${keyword}`);
}

describe('the schema that editors use', () => {
  it('is the one in schema/, as it is now', () => {
    expect(text('schema/instrument.schema.json')).toBe(
      `${JSON.stringify(instrumentJsonSchema(), null, 2)}\n`,
    );
  });

  it('is JSON Schema of draft 2020-12', () => {
    expect(committed.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(ajv.validateSchema(committed)).toBe(true);
  });

  it.each([
    ['the jetty', text('examples/jetty/instrument.yaml')],
    ['a starting file', startingFile('a vane')],
    ['the smallest file', JSON.stringify(MINIMUM)],
  ])('accepts %s', (_, file) => {
    expect(refusals(parse(file))).toEqual([]);
  });

  it.each([
    ['a slip of the finger', { ...MINIMUM, hed: {} }, ' additionalProperties'],
    ['a slip in a group', { ...MINIMUM, site: { mastHeightMm: 3 } }, '/site additionalProperties'],
    ['another version', { ...MINIMUM, vanewright: 2 }, '/vanewright const'],
    [
      'a disc of 80 m',
      { ...MINIMUM, disc: { ...MINIMUM.disc, diameterMm: 80_000 } },
      '/disc/diameterMm maximum',
    ],
    ['a number with its unit', { ...MINIMUM, disc: { ...MINIMUM.disc, webMm: '1 mm' } }, '/disc/webMm type'],
    [
      'a full turn of offset',
      { ...MINIMUM, site: { northOffsetDeg: 360 } },
      '/site/northOffsetDeg exclusiveMaximum',
    ],
    ['neither count nor resolution', { ...MINIMUM, need: {} }, '/need anyOf'],
    ['a code nobody knows', { ...MINIMUM, disc: { ...MINIMUM.disc, code: 'grey' } }, '/disc/code enum'],
    ['a name of two lines', { ...MINIMUM, name: 'a\nb' }, '/name pattern'],
    ['half a count', { ...MINIMUM, need: { positions: 2.5 } }, '/need/positions type'],
    [
      'a D bore without its flat',
      { ...MINIMUM, disc: { ...MINIMUM.disc, bore: { shape: 'd', diameterMm: 5 } } },
      '/disc/bore oneOf',
    ],
  ])('refuses %s', (_, file, refusal) => {
    expect(refusals(file)).toContain(refusal);
  });

  it('explains every field, with its unit where it has one', () => {
    const unexplained: string[] = [];
    const visit = (schema: Record<string, unknown>, path: string): void => {
      const fields = (schema.properties ?? {}) as Record<string, Record<string, unknown>>;
      for (const [name, field] of Object.entries(fields)) {
        const note = typeof field.description === 'string' ? field.description : '';
        const unit = field.unit === undefined || field.unit === '-' ? '' : `[${String(field.unit)}]`;
        if (!/^[A-Z].+/.test(note) || !note.includes(unit)) unexplained.push(`${path}.${name}`);
        visit(field, `${path}.${name}`);
      }
      for (const entry of (schema.oneOf ?? []) as Record<string, unknown>[]) visit(entry, path);
    };
    visit(committed, '');
    expect(unexplained).toEqual([]);
  });

  it('names the unit of every number that has one in the name of its field', () => {
    const endings: Record<string, string> = {
      mm: 'Mm',
      deg: 'Deg',
      'deg/s': 'DegPerS',
      ms: 'Ms',
      us: 'Us',
      ohm: 'Ohm',
      mA: 'Ma',
      mW: 'Mw',
      nm: 'Nm',
      V: 'V',
      m: 'M',
      percent: 'Percent',
      counts: 'Counts',
    };
    const wrong: string[] = [];
    const visit = (schema: Record<string, unknown>): void => {
      for (const [name, field] of Object.entries(
        (schema.properties ?? {}) as Record<string, Record<string, unknown>>,
      )) {
        const ending = endings[String(field.unit)];
        if (ending !== undefined && !name.endsWith(ending)) wrong.push(`${name} [${String(field.unit)}]`);
        visit(field);
      }
      for (const entry of (schema.oneOf ?? []) as Record<string, unknown>[]) visit(entry);
    };
    visit(committed);
    expect(wrong).toEqual([]);
  });
});
