import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startingFile } from '../../src/core/instrument/index.ts';
import { textOf } from '../support/sourceFiles.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { windSeries } from '../support/windSeries.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

/** Three weeks of invented wind, a line every five minutes. */
function log(): string {
  const start = Date.UTC(2026, 2, 1);
  const rows = windSeries({ seed: 4, count: 21 * 288, intervalMs: 300_000, memory: 100 }).map(
    ({ atMs, headingDeg, speedMPerS }) =>
      `${new Date(start + atMs).toISOString()},${headingDeg.toFixed(1)},${speedMPerS.toFixed(1)}`,
  );
  return `time,dir,speed_ms\n${rows.join('\n')}\n`;
}

describe('vanewright review', () => {
  let folder: ReturnType<typeof ownFolder>;
  const path = (name: string) => join(folder.path, name);
  const review = (...words: string[]) =>
    vanewright('review', path('jetty.yaml'), '--store', path('record'), ...words);
  beforeAll(() => {
    folder = ownFolder();
    writeFileSync(path('jetty.yaml'), startingFile('invented jetty'));
    writeFileSync(path('log.csv'), log());
    const logged = vanewright(
      'log',
      path('jetty.yaml'),
      '--from',
      path('log.csv'),
      '--store',
      path('record'),
    );
    expect(logged.exit).toBe(0);
  });
  afterAll(() => {
    folder.end();
  });

  it('writes a report, says the answer and exits 0 where the data is good enough', () => {
    const { exit, out } = review('--out', path('report'));
    expect(exit).toBe(0);
    expect(out).toMatch(/The wind came from \d+° ± \d+° on average/);
    expect(filesIn(path('report'))).toEqual(
      expect.arrayContaining(['review.html', 'review.pdf', 'pictures/rose.svg', 'tables/rose.csv']),
    );
  });

  it('prints one document that the published schema describes', () => {
    const { exit, out } = review(
      ...['--out', path('json'), '--against', '2026-03-02/2026-03-09', '--equal-weight', 'hour', '--json'],
    );
    expect(exit).toBe(0);
    const document: unknown = JSON.parse(out);
    isOutput(document);
    expect(isOutput.errors).toBeNull();
    expect(document).toMatchObject({ command: 'review', station: 'invented jetty', samples: 21 * 288 });
  });

  it('exits 1 where too much time is missing, and says so', () => {
    const { exit, out } = review('--out', path('gaps'), '--until', '2026-06-01');
    expect(exit).toBe(1);
    expect(out).toContain('The data falls short');
  });

  it('refuses a time without samples, and writes nothing', () => {
    const { exit, out } = review(
      '--out',
      path('none'),
      '--since',
      '2027-01-01',
      '--until',
      '2027-02-01',
      '--json',
    );
    expect(exit).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ ok: false, problems: [{ code: 'review/no-samples' }] });
    expect(filesIn(folder.path).some((file) => file.startsWith('none/'))).toBe(false);
  });
});
