import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { figuresPdf, type FiguresPage } from '../../src/core/make/index.ts';
import { withPdf } from '../support/pageRaster.ts';

const font = readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url));

const page = (rows: number): FiguresPage => ({
  title: 'Bench certificate: invented jetty',
  lines: ['PASS: read by its table, this build meets the need.'],
  tables: [
    {
      title: 'Figures',
      headings: ['figure', 'found', 'needed', ''],
      shares: [0.3, 0.4, 0.2, 0.1],
      rows: Array.from({ length: rows }, (_, i) => [
        `row${i}end`,
        '0.31 ± 0.02 mm towards position 9, '.repeat(4),
        'at most 10°',
        'pass',
      ]),
    },
  ],
});

const run = (bytes: Uint8Array, program: string, ...words: string[]): string =>
  withPdf(bytes, (file) =>
    execFileSync(program, [...words.slice(0, -1), file, ...words.slice(-1).filter(Boolean)], {
      encoding: 'utf8',
    }),
  );

describe('a certificate on paper', () => {
  it.each([1, 20, 120])(
    'is one page with every figure on it, read by a foreign program: %s rows',
    async (rows) => {
      const bytes = await figuresPdf(page(rows), { paper: 'a4', font });
      expect(run(bytes, 'pdfinfo', '')).toMatch(/Pages:\s+1\n/);
      const text = run(bytes, 'pdftotext', '-layout', '-');
      for (let i = 0; i < rows; i++) expect(text).toContain(`row${i}end`);
      expect(text).toContain('Bench certificate: invented jetty');
      expect(text).toContain('±');
    },
  );

  it('is the same bytes each time', async () => {
    const [a, b] = await Promise.all([0, 1].map(() => figuresPdf(page(9), { paper: 'a4', font })));
    expect(a).toEqual(b);
  });
});
