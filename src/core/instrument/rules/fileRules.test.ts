import { describe, expect, it } from 'vitest';
import { VanewrightError, type Problem } from '../../error/index.ts';
import { readInstrument } from '../index.ts';

/** Problems of a file in short: what it needs, its disc, and other sections. */
function problems(need: string, disc: string, more = ''): readonly Problem[] {
  const text = `vanewright: 1\nname: a\nneed: { ${need} }\ndisc: { process: { kind: fdm }, ${disc} }\n${more}`;
  try {
    readInstrument(text, 'f.yaml');
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
  return [];
}

describe('fields that are each in range', () => {
  it.each([
    ['bore: { shape: d, diameterMm: 5, acrossFlatMm: 2.5 }', 'instrument/flat-outside-bore'],
    ['bore: { shape: d, diameterMm: 5, acrossFlatMm: 5 }', 'instrument/flat-outside-bore'],
    ['bore: { shape: d, diameterMm: 5, acrossFlatMm: 2.51 }', null],
    ['bore: { shape: d, diameterMm: 5, acrossFlatMm: 4.99 }', null],
    ['hubDiameterMm: 5', 'instrument/bore-beyond-hub'],
    ['hubDiameterMm: 5.01', null],
    ['hubDiameterMm: 84', 'instrument/hub-beyond-rim'],
    ['hubDiameterMm: 83.9', null],
    ['bore: { shape: round, diameterMm: 74 }', 'instrument/hub-beyond-rim'],
    ['bore: { shape: round, diameterMm: 73.9 }', null],
  ])('on a disc of 84 mm with %s', (disc, code) => {
    expect(problems('positions: 32', `diameterMm: 84, ${disc}`).map((problem) => problem.code)).toEqual(
      code ? [code] : [],
    );
  });

  it.each([
    ['code: own-words', true],
    ['code: own-words, codeFile: code.csv', false],
    ['codeFile: code.csv', true],
    ['code: reflected-gray', false],
  ])('with %s name a code and its file one without the other: %s', (disc, isAlone) => {
    const found = problems('positions: 32', `diameterMm: 84, ${disc}`);
    expect(found.map(({ code }) => code)).toEqual(isAlone ? ['instrument/code-file-alone'] : []);
  });

  it.each([
    ['kind: laser, powerMw: 1', false],
    ['kind: laser, powerMw: 1.01', true],
    ['kind: laser, wavelengthNm: 400', false],
    ['kind: laser, wavelengthNm: 399', true],
    ['kind: laser, wavelengthNm: 700', false],
    ['kind: laser, wavelengthNm: 701', true],
    ['kind: laser, powerMw: 5, acceptHazard: true', false],
    ['kind: led, wavelengthNm: 950', false],
  ])('with the light %s are a hazard: %s', (light, isHazard) => {
    const found = problems('positions: 32', 'diameterMm: 84', `head: { light: { ${light} } }\n`);
    expect(found.map(({ code }) => code)).toEqual(isHazard ? ['instrument/laser-hazard'] : []);
  });

  it('of a beam both strong and unseen, the power is named, and the fix is a safe light, not the acknowledgement', () => {
    const light = 'head: { light: { kind: laser, powerMw: 4, wavelengthNm: 850 } }\n';
    const [problem] = problems('positions: 32', 'diameterMm: 84', light);
    expect(problem!.where).toContain('head.light.powerMw');
    expect(problem!.fix).toContain('LED');
    expect(problem!.fix).not.toContain('acceptHazard');
  });

  it('name a value that mends them', () => {
    const flat = problems(
      'positions: 32',
      'diameterMm: 84, bore: { shape: d, diameterMm: 6, acrossFlatMm: 6 }',
    );
    expect(flat[0]!.fix).toContain('acrossFlatMm to 5.4');
    const counts = problems('positions: 30, resolutionDeg: 10', 'diameterMm: 84');
    expect(counts[0]!.fix).toContain('positions to 36');
    const hub = problems('positions: 32', 'diameterMm: 84, hubDiameterMm: 5');
    expect(hub[0]!.fix).toContain('hubDiameterMm to 15');
  });
});

describe('a rule about fields', () => {
  it('is silent while one of them is wrong by itself', () => {
    const found = problems('positions: 32', 'diameterMm: 84, hubDiameterMm: 900');
    expect(found.map(({ code }) => code)).toEqual(['instrument/out-of-range']);
  });

  it('is silent while one of them is mistyped, since its value is not the default', () => {
    const found = problems(
      'positions: 32',
      'diameterMm: 40, hubDiametrMm: 45, bore: { shape: round, diameterMm: 35 }',
    );
    expect(found.map(({ code }) => code)).toEqual(['instrument/unknown-field']);
  });

  it('speaks beside a wrong field of another section', () => {
    const found = problems('positions: 31', 'diameterMm: 84', 'site: { mastHeightM: -1 }\n');
    expect(found.map(({ code }) => code)).toEqual(['codes/odd-count', 'instrument/out-of-range']);
  });
});

describe('the wind of a site', () => {
  it.each([
    ['[0, 0, 0, 0]', ['instrument/wind-from-nowhere']],
    ['[0, 0, 0, 1]', []],
    ['null', []],
  ])('with shares %s', (shares, codes) => {
    const found = problems(
      'positions: 32',
      'diameterMm: 84',
      `site: { wind: { sectorShares: ${shares} } }\n`,
    );
    expect(found.map(({ code }) => code)).toEqual(codes);
  });
});
