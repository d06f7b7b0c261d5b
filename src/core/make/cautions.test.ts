import { expect, it } from 'vitest';
import { cautionsFor, iecClass1Mw, lineClearanceM } from './cautions.ts';
import { readInstrument } from '../instrument/index.ts';

it('keeps one and a half mast heights from a line, and never less than 3.05 m', () => {
  expect(lineClearanceM(10)).toBe(15);
  expect(lineClearanceM(1)).toBe(3.05);
});

it('knows the limit of IEC Class 1 by wavelength', () => {
  // Values of the formula, from memory: 405, 480, 650, 850 and 940 nm.
  const limits = [405, 480, 650, 850, 940].map((nm) => Number(iecClass1Mw(nm).toFixed(3)));
  expect(limits).toEqual([0.039, 0.155, 0.39, 0.778, 1.178]);
});

it('names both systems of laser classes where there is a laser, and none where there is not', () => {
  const cautions = (light: string) =>
    cautionsFor(
      readInstrument(
        `vanewright: 1\nname: a\nneed: { positions: 32 }\ndisc: { diameterMm: 90, process: { kind: fdm } }\nhead: { light: ${light} }\n`,
        'a.yaml',
      ).instrument,
    ).map(({ title, sentences }) => [title, ...sentences].join(' '));
  const laser = cautions('{ kind: laser, powerMw: 0.9, wavelengthNm: 650 }').join(' ');
  expect(laser).toMatch(/Class 2.*IEC system.*US system/);
  expect(cautions('{ kind: led }').join(' ')).not.toContain('Class');
});
