import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import { discAreaMm2, planDisc } from '../../src/core/disc/index.ts';
import { readInstrument } from '../../src/core/instrument/index.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

/** Volume that the mesh checker finds. [mm³] */
function volumeOf(stl: string): number {
  const said = execFileSync('admesh', [stl], { encoding: 'utf8' });
  return Number(/Volume\s*:\s*([\d.]+)/.exec(said)![1]);
}

describe('solids opened by a modeller that we did not write', () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeAll(() => {
    folder = ownFolder();
    vanewright(
      'make',
      'examples/jetty/instrument.yaml',
      '--out',
      folder.path,
      '--only',
      'coupon,disc,prints',
    );
  });
  afterAll(() => {
    folder.end();
  });

  /** Has OpenSCAD import a file and export what it understood; gives the volume of that. [mm³] */
  const understood = (path: string): number => {
    const [script, out] = [join(folder.path, 'import.scad'), join(folder.path, 'understood.stl')];
    writeFileSync(script, `import(${JSON.stringify(join(folder.path, path))});`);
    execFileSync('openscad', ['-o', out, script], { stdio: 'pipe' });
    return volumeOf(out);
  };

  it.each(['disc.stl', 'disc.3mf'])('finds area times thickness in %s, to a thousandth', (path) => {
    const { instrument } = readInstrument(textOf('examples/jetty/instrument.yaml'), 'jetty');
    const { need, disc: spec } = instrument;
    const plan = planDisc(buildCode(spec.code, need.positions), spec);
    const wanted = discAreaMm2(plan) * spec.thicknessMm;
    expect(Math.abs(understood(path) / wanted - 1)).toBeLessThan(0.001);
  });

  it('understands every printed part as the mesh checker does', () => {
    const parts = filesIn(folder.path).filter((path) => /^(coupon|prints)\/.*[.]stl$/.test(path));
    expect(parts.length).toBeGreaterThan(10);
    for (const path of parts) {
      expect(Math.abs(understood(path) / volumeOf(join(folder.path, path)) - 1), path).toBeLessThan(0.001);
    }
  });
});
