import { describe, expect, it } from 'vitest';
import { fieldSchema } from '../../core/instrument/index.ts';
import { groupOfKind, kindName, valueAt } from './fieldValue.ts';
import { schemaAt } from './schemaField.ts';

const at = (path: string) => schemaAt(fieldSchema(), path.split('.'))!;

describe('a group that has kinds', () => {
  it('keeps what both kinds have and begins the rest with an example', () => {
    expect(kindName(at('disc.bore'))).toBe('shape');
    expect(groupOfKind(at('disc.bore'), 'd', { shape: 'round', diameterMm: 8 })).toEqual({
      shape: 'd',
      diameterMm: 8,
      acrossFlatMm: 4.5,
    });
  });

  it('leaves out what has a default of its own kind', () => {
    const before = { kind: 'photoresistor', litOhm: 3000, riseMs: 20 };
    expect(groupOfKind(at('head.detector'), 'phototransistor', before)).toEqual({ kind: 'phototransistor' });
  });

  it.each([
    ['disc.process', ['fdm', 'laser', 'film', 'colour-print', 'pcb']],
    ['disc.form', ['through-cut', 'relief', 'overlay', 'inlay', 'copper']],
    ['disc.hub', ['plain', 'clamp', 'bearing-seat']],
    ['head.light', ['led', 'laser']],
    ['head.aperture', ['slit', 'round', 'gaussian']],
  ])('of the file is known by its kinds: %s', (path, kinds) => {
    const name = kindName(at(path))!;
    expect(at(path).oneOf!.map(({ properties }) => properties![name]!.const)).toEqual(kinds);
  });
});

describe('the value of a field', () => {
  it('is found through groups, and is none where a group is missing or null', () => {
    expect(valueAt({ disc: { bore: { diameterMm: 5 } } }, ['disc', 'bore', 'diameterMm'])).toBe(5);
    expect(valueAt({ disc: null }, ['disc', 'bore', 'diameterMm'])).toBeUndefined();
    expect(valueAt(undefined, ['disc'])).toBeUndefined();
  });
});
