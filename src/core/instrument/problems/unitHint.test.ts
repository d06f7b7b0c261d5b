import { describe, expect, it } from 'vitest';
import { readInstrument } from '../index.ts';
import { VanewrightError } from '../../error/index.ts';

/** The first problem of a file whose `section` says so. */
function firstProblem(section: string) {
  const need = section.startsWith('need') ? '' : 'need: { positions: 32 }\n';
  const disc = section.startsWith('disc') ? '' : 'disc: { diameterMm: 84, process: { kind: fdm } }\n';
  try {
    readInstrument(`vanewright: 1\nname: a\n${need}${disc}${section}\n`, 'f.yaml');
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems[0]!;
    throw error;
  }
  throw new Error('the file was read');
}

/** The fix for `disc.diameterMm` written so. */
function diameterFix(written: string): string {
  return firstProblem(`disc: { diameterMm: ${written}, process: { kind: fdm } }`).fix;
}

describe('a number in another unit', () => {
  it.each([
    ['80000', '80000 mm is 80 m; did you mean 80?'],
    ['0.08', '0.08 m is 80 mm; did you mean 80?'],
    ['8', '8 cm is 80 mm, 8 inch is 203.2 mm; did you mean 80 or 203.2?'],
    ['3.3', '3.3 inch is 83.82 mm, 3.3 cm is 33 mm; did you mean 83.82 or 33?'],
    ['-84', 'Set disc.diameterMm to 16.'],
    ['1e12', 'Set disc.diameterMm to 600.'],
    ['0', 'Set disc.diameterMm to 16.'],
  ])('%s mm across the disc', (written, fix) => {
    expect(diameterFix(written)).toBe(fix);
  });

  it.each([
    ['need: { positions: 32, wantedYield: 95 }', '95 % is 0.95; did you mean 0.95?'],
    ['need: { positions: 32, turnRateDegPerS: 36000 }', 'Set need.turnRateDegPerS to 3600.'],
    ['controller: { lineIntervalMs: 0.25 }', '0.25 s is 250 ms; did you mean 250?'],
    ['controller: { lineIntervalMs: 1 }', '1 s is 1000 ms; did you mean 1000?'],
    ['cups: { quietUs: 1.5 }', '1.5 ms is 1500 us; did you mean 1500?'],
    ['circuit: { resistorOhm: 4.7 }', '4.7 kohm is 4700 ohm; did you mean 4700?'],
    ['site: { mastHeightM: 400 }', '400 cm is 4 m; did you mean 4?'],
    ['head: { light: { kind: led, wavelengthNm: 0.525 } }', '0.525 um is 525 nm; did you mean 525?'],
  ])('%s', (section, fix) => {
    expect(firstProblem(section).fix).toBe(fix);
  });

  it('is told with what was found and what is allowed, both with the unit', () => {
    expect(firstProblem('disc: { diameterMm: 80000, process: { kind: fdm } }')).toEqual({
      code: 'instrument/out-of-range',
      what: 'disc.diameterMm is outside what it can be.',
      where: 'f.yaml:4:21 › disc.diameterMm',
      got: '80000 mm',
      allowed: 'a number from 16 to 600 mm',
      fix: '80000 mm is 80 m; did you mean 80?',
    });
  });
});

describe('a text where a number belongs', () => {
  it.each([
    ['80 mm', 'Write the number alone: 80 (the unit is in the name of the field).'],
    ['80mm', 'Write the number alone: 80 (the unit is in the name of the field).'],
    ['"80"', 'Write the number alone: 80 (the unit is in the name of the field).'],
    ['8 cm', 'Write the number alone: 80 ("8 cm" is 80 mm).'],
    ['3.5 inches', 'Write the number alone: 88.9 ("3.5 inches" is 88.9 mm).'],
    ['80 m', 'Write the number alone: 80 (80000 mm is 80 m).'],
    ['"80,5"', 'Write the number alone: 80.5 (the decimal sign is a point).'],
    ['"80,5 mm"', 'Write the number alone: 80.5 (the decimal sign is a point).'],
    ['"80,000"', 'Write the number alone: 80 (the decimal sign is a point).'],
    ['84 furlongs', 'Write the number alone, in mm, such as 84.'],
    ['about 80', 'Write the number alone, in mm, such as 84.'],
    ['80 to 90', 'Write the number alone, in mm, such as 84.'],
  ])('%s across the disc', (written, fix) => {
    expect(diameterFix(written)).toBe(fix);
  });

  it.each([
    ['circuit: { noiseCounts: 1,5 }', 'Write noiseCounts: 1.5 (the decimal sign is a point).'],
    [
      'circuit: { resistorOhm: 10,000, noiseCounts: 1 }',
      'Write resistorOhm: 10.000 (the decimal sign is a point), or 10000 for thousands.',
    ],
    ['circuit: { resistorOhm: 10k }', 'Write the number alone: 10000 ("10k" is 10000 ohm).'],
    [
      'circuit: { resistorOhm: "10,000" }',
      'Write the number alone: 10000 (thousands are written without a comma).',
    ],
    [
      'circuit: { resistorTolerancePercent: 5 % }',
      'Write the number alone: 5 (the unit is in the name of the field).',
    ],
    [
      'controller: { baud: 9600 baud }',
      'Write the number alone: 9600 (the unit is in the name of the field).',
    ],
    ['need: { positions: 32 steps }', 'Write the number alone, such as 32.'],
    [
      'need: { positions: 32, turnRateDegPerS: 15 rpm }',
      'Write the number alone: 90 ("15 rpm" is 90 deg/s).',
    ],
    [
      'head: { light: { kind: led, currentMa: 20 mA } }',
      'Write the number alone: 20 (the unit is in the name of the field).',
    ],
  ])('%s', (section, fix) => {
    expect(firstProblem(section)).toMatchObject({ code: 'instrument/not-a-number', fix });
  });
});
