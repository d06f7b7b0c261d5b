import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

const JETTY = 'examples/jetty/instrument.yaml';

interface Weighed {
  readonly weighing: {
    readonly windBasis: string;
    readonly verdict: { readonly advice: string; readonly best: string };
    readonly principles: readonly {
      readonly name: string;
      readonly figures: { readonly wait: { readonly meanH: number; readonly neverShare: number } | null };
    }[];
  };
  readonly leftOut: readonly number[];
}

function weighed(...words: string[]): Weighed {
  const { exit, out } = vanewright('weigh', ...words, '--json');
  expect(exit).toBe(0);
  const document = JSON.parse(out) as Weighed;
  expect(isOutput(document), JSON.stringify(isOutput.errors)).toBe(true);
  return document;
}

describe('vanewright weigh', () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeAll(() => {
    folder = ownFolder();
  });
  afterAll(() => {
    folder.end();
  });

  it.each([
    ['jetty', 'do-not-build-a-disc', 'magnetic-angle-chip'],
    ['dome', 'build-a-disc', 'disc-with-focused-beams'],
    ['sluice', 'build-a-disc', 'disc-with-focused-beams'],
    ['tricolour', 'build-a-disc', 'disc-in-colours'],
  ])('tells the maker of the %s to %s', (name, advice, best) => {
    const { verdict } = weighed(`examples/${name}/instrument.yaml`).weighing;
    expect(verdict).toMatchObject({ advice, best });
  });

  it('begins with the verdict and what would change it, in words', () => {
    const { exit, out } = vanewright('weigh', JETTY);
    expect(exit).toBe(0);
    expect(out).toMatch(/^boathouse jetty vane: /);
    expect(out).toMatch(/\n\nDo not build a disc: .*\n/);
    expect(out).toContain('What would change it');
    expect(out).toContain('is met after');
  });

  it('takes a recorded wind instead of the model', () => {
    const path = join(folder.path, 'wind.csv');
    // Ten days of hours: the wind goes from 350 to 10 and back, twice a day, and never farther.
    const rows = Array.from({ length: 240 }, (_, i) => {
      const at = new Date(Date.UTC(2024, 0, 1) + i * 3_600_000).toISOString();
      return `${at},${i % 12 < 6 ? 350 : 10}`;
    });
    writeFileSync(
      path,
      ['time,heading_deg', ...rows.slice(0, 30), 'cable off', ...rows.slice(30)].join('\n'),
    );
    const { weighing, leftOut } = weighed(JETTY, '--wind', path);
    expect(weighing.windBasis).toBe('recorded');
    expect(leftOut).toEqual([32]);
    const { wait } = weighing.principles.find(({ name }) => name === 'counting-wheel-with-index')!.figures;
    // Every turn past north is six hours from the last: 6, 5, 4, 3, 2 and 1 hours, 3.5 on average, or none after the last.
    expect(wait!.meanH).toBeGreaterThan(3);
    expect(wait!.meanH).toBeLessThan(3.7);
    expect(wait!.neverShare).toBeCloseTo(6 / 240, 6);
  });

  it('goes from a purpose to a need, with a file or without', () => {
    const alone = vanewright('weigh', '--purpose', 'garden');
    expect(alone.exit).toBe(0);
    expect(alone.out).toContain('need: { positions: 32, accuracyDeg: 10 }');
    expect(alone.out).toContain('A mean of 10 minutes');
    const both = weighed(JETTY, '--purpose', 'station') as Weighed & { purpose: { stepDeg: number } };
    expect(both.purpose.stepDeg).toBe(1);
  });

  it('refuses what it cannot weigh', () => {
    expect(vanewright('weigh')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('weigh/nothing-asked') as string,
    });
    const short = join(folder.path, 'short.csv');
    writeFileSync(short, 'time,heading_deg\n2024-01-01T00:00:00Z,10\n2024-01-01T01:00:00Z,20\n');
    const refused = vanewright('weigh', JETTY, '--wind', short, '--json');
    expect(refused.exit).toBe(2);
    expect(refused.out).toContain('weigh/short-series');
    expect(vanewright('weigh', '--purpose', 'kitchen').exit).toBe(2);
  });

  it('says the same twice', () => {
    expect(vanewright('weigh', JETTY, '--json').out).toBe(vanewright('weigh', JETTY, '--json').out);
  });
});
