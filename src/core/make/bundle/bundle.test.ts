import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { buildCode } from '../../codes/index.ts';
import { discLayers, planDisc, processDefaults, type DiscSpec } from '../../disc/index.ts';
import { discFiles } from '../discFiles.ts';
import { discSolids } from '../stl/discSolids.ts';
import { bundlePapers, bundleZip } from './bundleFiles.ts';
import { jobTimes } from './jobTimes.ts';
import { massRows } from './masses.ts';
import { travelOf } from './penLength.ts';

const planOf = (spec: DiscSpec, positions = 32) => planDisc(buildCode(spec.code, positions), spec);
const textOf = (content: string | Uint8Array) => content as string;

describe('what a tool travels', () => {
  it('is the length of the outlines in closed form', () => {
    // One window over half the turn from 14 to 37.6 mm; rim 40 mm, bore of 5 mm.
    const plan = planOf({ ...jettyDisc, bore: { shape: 'round', diameterMm: 5 }, notch: noNotch }, 2);
    const cut = discLayers(plan).find(({ name }) => name === 'cut')!;
    const { lengthMm, outlines } = travelOf(cut.draw);
    expect(lengthMm).toBeCloseTo(Math.PI * (80 + 5) + Math.PI * (14 + 37.6) + 2 * (37.6 - 14), 9);
    expect(outlines).toBe(3);
  });
});

describe('how long machines take', () => {
  it('is told for a cut with the numbers it rests on', () => {
    const plan = planOf(
      {
        ...jettyDisc,
        bore: { shape: 'round', diameterMm: 5 },
        notch: noNotch,
        process: processDefaults.laser,
        thicknessMm: 6,
      },
      2,
    );
    const [cut] = jobTimes(plan, [], []);
    // 6 mm thick: 5 mm/s; three outlines, a second each.
    const length = Math.PI * 85 + Math.PI * 51.6 + 47.2;
    expect(cut!.minutes).toBeCloseTo((length / 5 + 3) / 60, 9);
    expect(cut!.assumption).toContain('at 5 mm/s through 6 mm; 3 outlines');
  });

  it('counts what is engraved: half the area of every band', () => {
    const form = { kind: 'relief', floorMm: 2, raised: 'dark' } as const;
    const plan = planOf({ ...jettyDisc, process: processDefaults.laser, thicknessMm: 3, form }, 2);
    const [engrave] = jobTimes(plan, [], []);
    const area = (Math.PI / 2) * (37.6 ** 2 - 14 ** 2);
    expect(engrave!.minutes).toBeCloseTo(area / 20 / 60, 6);
  });

  it('grows with the plastic of a print', () => {
    const plan = planOf({ ...jettyDisc, bore: { shape: 'round', diameterMm: 5 }, notch: noNotch }, 2);
    const [print] = jobTimes(plan, discSolids(plan), []);
    const volume = 2 * Math.PI * (1600 - 6.25 - (37.6 ** 2 - 14 ** 2) / 2);
    // Five minutes to warm up, 5 mm³ a second, ten layers of three seconds.
    expect(print!.minutes).toBeCloseTo((300 + volume / 5 + 30) / 60, 1);
  });
});

describe('what parts weigh', () => {
  it('is volume times density, equal parts counted together', () => {
    const plan = planOf(jettyDisc);
    const [solid] = discSolids(plan);
    const peg = { ...solid!, name: 'peg' };
    const rows = massRows(plan, [peg, peg]);
    expect(rows.map(({ quantity, part, material }) => [quantity, part, material])).toEqual([
      [1, 'coded disc', 'PLA'],
      [2, 'peg', 'PLA'],
    ]);
    expect(Math.abs(rows[1]!.massG / rows[0]!.massG - 1)).toBeLessThan(0.001);
  });
});

describe('the papers of a bundle', () => {
  const instrument = exampleInstrument('jetty');
  const head = plannedHead(instrument);
  const papers = bundlePapers({ instrument, head }, []);
  const paper = (path: string) => textOf(papers.find((file) => file.path === path)!.content);

  it('tell how this very disc works', () => {
    const page = paper('how-it-works.html');
    expect(page).toContain('cut into 32 positions of 11.25°');
    expect(page).toContain('only one channel changes');
    expect(page).toContain('<td>11000</td>'); // Gray word of position 16
  });

  it('say what a licence lets others do, and keep the cautions', () => {
    expect(paper('LICENCES.txt')).toContain('CC-BY-4.0');
    expect(paper('CAUTIONS.txt')).toContain('Power lines');
  });
});

describe('the zip of a bundle', () => {
  it('is opened by another program, and its checksums are confirmed by sha256sum', () => {
    const files = discFiles(planOf(jettyDisc));
    const { content } = bundleZip(files);
    const folder = mkdtempSync(join(tmpdir(), 'bundle-'));
    try {
      writeFileSync(join(folder, 'bundle.zip'), content);
      const script = 'import sys, zipfile; zipfile.ZipFile(sys.argv[1]).extractall(sys.argv[2])';
      execFileSync('/usr/bin/python3', ['-c', script, join(folder, 'bundle.zip'), folder]);
      const said = execFileSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: folder, encoding: 'utf8' });
      expect(said.trim().split('\n')).toEqual(files.map(({ path }) => `${path}: OK`));
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('is the same to the last byte when made again', () => {
    const [one, other] = [1, 2].map(() => bundleZip(discFiles(planOf(jettyDisc))).content as Uint8Array);
    expect(Buffer.from(one!).equals(Buffer.from(other!))).toBe(true);
  });
});
