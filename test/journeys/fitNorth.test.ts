import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeInstrumentFiles, nodeOutputFolder } from '../../src/adapters/nodeFiles/index.ts';
import { fitNorth, type NorthRequest } from '../../src/app/api.ts';
import { readInstrument, startingFile } from '../../src/core/instrument/index.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

/** Place and moment of the worked example of NREL/TP-560-34302, table A5.1: the sun stands at 194.340241 degrees. */
const EXAMPLE = [
  '--latitude-deg',
  '39.742476',
  '--longitude-deg',
  '-105.1786',
  '--at',
  '2003-10-17T12:30:30-07:00',
];

describe('vanewright fit north', () => {
  let folder: ReturnType<typeof ownFolder>;
  let file: string;
  beforeAll(() => {
    folder = ownFolder();
    file = join(folder.path, 'instrument.yaml');
    writeFileSync(file, startingFile('invented jetty'));
  });
  afterAll(() => {
    folder.end();
  });

  it('by the sun says what the display must show, as the published example has it', () => {
    const { exit, out } = vanewright('fit', 'north', file, '--sun', ...EXAMPLE);
    expect(exit).toBe(0);
    expect(out).toContain('turn the mast until the display shows 194.3°');
    expect(out).toContain('Never look at the sun');
    expect(out).toContain('power lines');
  });

  it('by a landmark takes the place of the vane from the file', () => {
    const placed = join(folder.path, 'placed.yaml');
    const text = startingFile('x').replace(
      '  mastHeightM',
      '  latitudeDeg: 0\n  longitudeDeg: 10\n  mastHeightM',
    );
    writeFileSync(placed, text);
    // Due east along the equator.
    const { out } = vanewright('fit', 'north', placed, '--landmark-deg', '0,10.2', '--name', 'lighthouse');
    expect(out).toContain('points at lighthouse, and turn the mast until the display shows 90°');
  });

  it('by compass adds the declination of place and day, with its uncertainty', () => {
    const where = ['--latitude-deg', '80', '--longitude-deg', '0', '--at', '2025-01-01T00:00:00Z'];
    const said = vanewright(
      'fit',
      'north',
      file,
      '--compass-deg',
      '100',
      '--name',
      'hill',
      ...where,
      '--json',
    );
    const found = JSON.parse(said.out) as {
      bearingDeg: number;
      declination: { declinationDeg: number; sigmaDeg: number };
    };
    expect(isOutput(found), JSON.stringify(isOutput.errors)).toBe(true);
    expect(found.bearingDeg).toBeCloseTo(100 + found.declination.declinationDeg, 6);
    // World Magnetic Model 2025, published test values: 2025.0, 0 km, 80 N, 0 E has 1.28 degrees.
    expect(found.declination.declinationDeg).toBeCloseTo(1.28, 2);
    expect(found.declination.sigmaDeg).toBeGreaterThan(0.26);
  });

  it('writes the offset that makes a wrong display right, its day, and a picture', () => {
    const own = join(folder.path, 'own.yaml');
    writeFileSync(own, startingFile('own').replace('northOffsetDeg: 0', 'northOffsetDeg: 348'));
    const out = join(folder.path, 'out');
    const bearing = ['--bearing-deg', '5', '--name', 'the mill', '--shows-deg', '350'];
    const at = ['--at', '2024-05-17T12:30:00+02:00'];
    const said = vanewright('fit', 'north', own, ...bearing, ...at, '--write', '--out', out);
    expect(said.out).toContain(`Wrote site.northOffsetDeg and its day to ${own}`);
    expect(filesIn(out)).toContain('north.svg');
    expect(readFileSync(join(out, 'north.svg'), 'utf8')).toContain('the display must show 5°');
    const text = readFileSync(own, 'utf8');
    // It shows 15 degrees too little, so the offset grows by 15: 348 + 15 = 3.
    expect(text).toContain(
      "northOffsetDeg: 3 # heading shown when the index mark is at the head's reference line",
    );
    const { site } = readInstrument(text, own).instrument;
    expect(site.northHistory).toMatchObject([{ since: '2024-05-17T10:30:00.000Z', offsetDeg: 3 }]);
    const again = vanewright(
      'fit',
      'north',
      own,
      ...bearing,
      '--at',
      '2025-05-17T10:30:00Z',
      '--write',
      '--json',
    );
    const found = JSON.parse(again.out) as { history: unknown[] };
    expect(isOutput(found), JSON.stringify(isOutput.errors)).toBe(true);
    expect(found.history).toHaveLength(2);
  });

  const asked = (more: Partial<NorthRequest>) =>
    fitNorth(
      { files: nodeInstrumentFiles, output: nodeOutputFolder },
      {
        path: file,
        targets: [{ by: 'sun' }],
        name: 'the mill',
        latitudeDeg: 39.742476,
        longitudeDeg: -105.1786,
        at: '2003-10-17T12:30:30-07:00',
        showsDeg: null,
        write: true,
        out: null,
        ...more,
      },
      new AbortController().signal,
    );

  it.each([
    ['nothing to point at', { targets: [], showsDeg: 5 }, 'fit/one-target'],
    ['two things to point at', { targets: [{ by: 'sun' }, { by: 'sun' }] }, 'fit/one-target'],
    ['a place not told', { latitudeDeg: null, showsDeg: 5 }, 'fit/place-not-told'],
    ['a display not told', {}, 'fit/display-not-told'],
    ['a sun below the horizon', { at: '2003-10-17T23:30:30-07:00', showsDeg: 5 }, 'fit/sun-unfit'],
  ] satisfies [string, Partial<NorthRequest>, string][])(
    'refuses %s, and leaves the file as it was',
    async (_, more, code) => {
      await expect(asked(more)).rejects.toThrow(code);
      expect(readFileSync(file, 'utf8')).toBe(startingFile('invented jetty'));
    },
  );

  it('refuses a time without its zone', () => {
    const { exit, err } = vanewright('fit', 'north', file, '--sun', '--at', '2024-05-17T10:30:00');
    expect([exit, err]).toEqual([2, expect.stringContaining('with its zone')]);
  });
});
