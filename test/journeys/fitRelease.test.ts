import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeInstrumentFiles } from '../../src/adapters/nodeFiles/index.ts';
import { fitRelease, type ReleaseRequest } from '../../src/app/api.ts';
import { startingFile } from '../../src/core/instrument/index.ts';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

/** A vane held 12 degrees off and let go after a second: the damped swing in closed form. */
function swingFile(damping: number, periodS: number): string {
  const natural = (2 * Math.PI) / periodS / Math.sqrt(1 - damping ** 2);
  const damped = (2 * Math.PI) / periodS;
  const rows = Array.from({ length: 500 }, (_, i) => {
    const t = Math.max(0, 0.02 * i - 1);
    const swing = Math.cos(damped * t) + ((damping * natural) / damped) * Math.sin(damped * t);
    return `${20 * i},${(355 + 12 * Math.exp(-damping * natural * t) * swing) % 360}`;
  });
  return `time_ms,heading_deg\n${rows.join('\n')}\n`;
}

/** Cups that slow down by 0.05 Hz a second in the bearing and a tenth of their speed a second in the air. */
function spinFile(): string {
  const times: string[] = ['time_s'];
  let [phase, hz, t] = [0, 4, 0];
  while (hz > 0.02) {
    hz -= (0.05 + 0.1 * hz) * 1e-4;
    phase += hz * 1e-4;
    t += 1e-4;
    if (phase >= times.length) times.push(t.toFixed(4));
  }
  return times.join('\n');
}

describe('vanewright fit release', () => {
  let folder: ReturnType<typeof ownFolder>;
  let file: string;
  const path = (name: string) => join(folder.path, name);
  beforeAll(() => {
    folder = ownFolder();
    file = path('instrument.yaml');
    writeFileSync(file, startingFile('invented jetty'));
    writeFileSync(path('good.csv'), swingFile(0.45, 1));
    writeFileSync(path('loose.csv'), swingFile(0.15, 1));
    writeFileSync(path('spin.csv'), spinFile());
  });
  afterAll(() => {
    folder.end();
  });

  it('tells damping and wavelength of a good vane, and how long the cups spin', () => {
    const words = [
      '--swing',
      path('good.csv'),
      '--speed-m-per-s',
      '5',
      '--resolution-deg',
      '0.1',
      '--spin-down',
      path('spin.csv'),
    ];
    const said = vanewright('fit', 'release', file, ...words, '--json');
    expect(said.exit).toBe(0);
    const found = JSON.parse(said.out) as {
      release: { motion: { damping: number; dampedWavelengthM: number } };
      spinDown: { spinDownS: number };
    };
    expect(isOutput(found), JSON.stringify(isOutput.errors)).toBe(true);
    expect(Math.abs(found.release.motion.damping - 0.45)).toBeLessThan(0.03);
    expect(Math.abs(found.release.motion.dampedWavelengthM - 5)).toBeLessThan(0.3);
    // From 2 Hz to standing, in closed form: ln(1 + 0.1 · 2 / 0.05) / 0.1.
    expect(Math.abs(found.spinDown.spinDownS / (Math.log(5) / 0.1) - 1)).toBeLessThan(0.1);
  });

  it('says of a vane that swings too long which range it misses', () => {
    const words = ['--swing', path('loose.csv'), '--speed-m-per-s', '5', '--resolution-deg', '0.1'];
    const { exit, out } = vanewright('fit', 'release', file, ...words);
    expect(exit).toBe(1);
    expect(out).toMatch(/damping ratio {4}0\.1\d: 0\.3 to 0\.7 NO/);
    expect(out).toMatch(/damped wave {6}\d+(\.\d)? m: below 10 m yes/);
  });

  const nothing: ReleaseRequest = {
    path: '',
    swing: null,
    speedMPerS: null,
    resolutionDeg: null,
    spinDown: null,
  };

  it.each([
    ['no recording', {}, 'fit/nothing-let-go'],
    ['a stream not told', { swing: 'good.csv' }, 'fit/stream-not-told'],
    ['steps as wide as the swing', { swing: 'good.csv', speedMPerS: 5 }, 'fit/release-too-coarse'],
    ['a file without headings', { swing: 'spin.csv', speedMPerS: 5 }, 'fit/no-column'],
  ] satisfies [string, Partial<ReleaseRequest>, string][])('refuses %s', async (_, words, code) => {
    const swing = 'swing' in words ? path(words.swing) : null;
    const asked = fitRelease(nodeInstrumentFiles, { ...nothing, ...words, path: file, swing });
    await expect(asked).rejects.toThrow(code);
  });
});
