import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { admeshReport, SOUND } from '../support/admesh.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';
import { readStl } from '../support/stlReader.ts';

/** Bands of the strip: five from its lower rim of 2.4 mm, with webs of 1.2 mm between. [mm] */
const BAND_MM = (45 - 2.4 - 15 - 4 * 1.2) / 5;
const acrossMm = (track: number) => 2.4 + track * (BAND_MM + 1.2) + BAND_MM / 2;

describe('the jetty vane turned into the gauge of a float, its code on a strip of 400 mm', () => {
  let folder: ReturnType<typeof ownFolder>;
  const making = (name: string, ...changes: [string, string][]) => {
    const text = textOf('examples/jetty/instrument.yaml');
    const changed = changes.reduce((before, [from, to]) => before.replace(from, to), text);
    const path = join(folder.path, `${name}.yaml`);
    writeFileSync(path, changed.replace('disc:\n', 'disc:\n  strip: { turnLengthMm: 400 }\n'));
    return vanewright('make', path, '--out', join(folder.path, name), '--builds', '200', '--json');
  };
  const made = (path: string) => readFileSync(join(folder.path, 'float', path));

  beforeAll(() => {
    folder = ownFolder();
    expect(making('float', ['cups:\n  pulsesPerTurn: 2\n  pin: D2\n  quietUs: 1500\n', '']).exit).toBe(0);
  }, 60_000);
  afterAll(() => {
    folder.end();
  });

  it('is proved as any disc is', () => {
    expect(JSON.parse(made('proof.json').toString())).toMatchObject({ verdict: 'yes' });
  });

  it('has holders across the strip and nothing that sits on a shaft', () => {
    const prints = filesIn(join(folder.path, 'float/prints')).filter((path) => path.endsWith('.stl'));
    expect(prints).toEqual(['light-holder.stl', 'sensor-holder.stl', 'spacer.stl']);
    for (const path of prints) expect(admeshReport(made(`prints/${path}`))).toMatchObject(SOUND);
    const parts = made('parts.csv').toString();
    // One turn and 10 mm of lead at both ends, closed by a rim of 2.4 mm.
    expect(parts).toContain('coded strip,"424.8 mm long, 32.4 mm wide, 2 mm thick"');
    expect(parts).not.toContain('shaft');
  });

  it('has an opening in the sensor holder over the middle of each track, and a wall between', () => {
    const { crossingsAt } = readStl(made('prints/sensor-holder.stl'));
    // The lower edge of the strip lies where the disc of the same sizes has 15 mm less 2.4 mm.
    const base = 15 - 2.4;
    for (let track = 0; track < 5; track++) {
      expect(crossingsAt(0.01, base + acrossMm(track) + 0.01)).toBe(0);
      if (track < 4) expect(crossingsAt(0.01, base + acrossMm(track) + (BAND_MM + 1.2) / 2)).toBe(2);
    }
  });

  it('says which code its holders need where sensors would stand along it', () => {
    const { out, exit } = making('along', ['head:\n', 'head:\n  staggerDeg: 20\n']);
    expect(exit).toBe(0);
    expect(out).toContain('make/strip-head-along');
    expect(filesIn(join(folder.path, 'along')).some((path) => path.includes('sensor-holder'))).toBe(false);
  });
});
