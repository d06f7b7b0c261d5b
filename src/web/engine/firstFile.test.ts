import { describe, expect, it } from 'vitest';
import { proveInstrument } from '../../app/api.ts';
import type { FirstAnswers } from './firstAnswers.ts';
import { firstFile } from './firstFile.ts';
import { memoryFiles } from './memoryFiles.ts';

const five: FirstAnswers = {
  name: 'my vane',
  process: 'fdm',
  detector: 'photoresistor',
  sensors: 5,
  positions: 32,
  diameterMm: 90,
  boreDiameterMm: 5,
};

const cases: readonly Partial<FirstAnswers>[] = [
  {},
  { process: 'laser', detector: 'phototransistor', sensors: 6, positions: 64, diameterMm: 120 },
  { process: 'film', detector: 'slot-pair', sensors: 4, positions: 16, diameterMm: 60 },
  { detector: 'reflectance-pair', sensors: 3, positions: 8, diameterMm: 80 },
  { process: 'colour-print', detector: 'colour-sensor', sensors: 3, positions: 27, diameterMm: 80 },
  { process: 'pcb', detector: 'phototransistor', sensors: 5, positions: 32, diameterMm: 80 },
  { sensors: 2, positions: 360 },
];

describe('a first file', () => {
  it.each(cases)('can be made and proves clean with what is at hand: %o', async (part) => {
    const file = await firstFile({ ...five, ...part });
    expect(file).not.toBeNull();
    const { proof } = await proveInstrument(memoryFiles({ 'a.yaml': file!.text }), {
      path: 'a.yaml',
      builds: 200,
      seed: 1,
    });
    expect(proof.reasons.join(' ')).not.toBe('');
    expect(proof.verdict).toBe('yes');
  });

  it('takes the thirty-two positions that five photoresistors tell apart', async () => {
    const file = await firstFile(five);
    expect(file).toMatchObject({ positions: 32, diameterMm: 90 });
    expect(file!.text).toContain('kind: photoresistor');
    expect(file!.text).toContain('# Every field is explained');
  });

  it('never asks for more sensors than are there', async () => {
    expect((await firstFile({ ...five, sensors: 3, positions: 360 }))!.positions).toBeLessThanOrEqual(8);
  });
});
