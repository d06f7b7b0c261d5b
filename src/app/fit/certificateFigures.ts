import type { Certificate, Fit } from '../../core/fit/index.ts';
import type { FiguresPage, FiguresTable } from '../../core/make/index.ts';

const passText = (passes: boolean | null): string => (passes === null ? '' : passes ? 'pass' : 'FAIL');

function changesTable({ changes }: Certificate): FiguresTable[] {
  if (!changes) return [];
  const rows = changes.map(({ where, before, now, matters }) => [
    where,
    before,
    now,
    matters ? 'look at it' : '',
  ]);
  return [
    {
      title: 'Since the certificate before',
      headings: ['where', 'before', 'now', ''],
      shares: [0.2, 0.34, 0.34, 0.12],
      rows: rows.length > 0 ? rows : [['', 'Nothing has changed that can be told.', '', '']],
    },
  ];
}

function foundTables({ causes, unknowns }: Fit): FiguresTable[] {
  const shares = [0.24, 0.4, 0.36];
  const causeRows = causes.map(({ title, evidence, instruction }) => [title, evidence, instruction]);
  const unknownRows = unknowns.map(({ what, why, recordNext }) => [what, why, recordNext]);
  const tables: FiguresTable[] = [
    { title: 'What was found', headings: ['what', 'evidence', 'what to do'], shares, rows: causeRows },
    {
      title: 'What this recording cannot tell',
      headings: ['what', 'why', 'record next'],
      shares,
      rows: unknownRows,
    },
  ];
  return tables.filter(({ rows }) => rows.length > 0);
}

/** The bench certificate as figures for one sheet of paper; the pictures are on the page of HTML. */
export function certificateFigures(certificate: Certificate, fit: Fit): FiguresPage {
  const { name, recordedAt, tableHash, files, samples, repairs, passes, reasons, rows } = certificate;
  return {
    title: `Bench certificate: ${name}`,
    lines: [
      passes
        ? 'PASS: read by its table, this build meets the need.'
        : 'FAIL: this build does not meet the need.',
      `Recorded ${recordedAt}. Table ${tableHash ?? 'none'}. From ${files.join(', ')}: ${samples} samples, ${repairs} repairs listed.`,
      ...reasons,
    ],
    tables: [
      {
        title: 'Figures',
        headings: ['figure', 'found', 'needed', ''],
        shares: [0.26, 0.46, 0.2, 0.08],
        rows: rows.map((row) => [row.figure, row.found, row.needed ?? '', passText(row.passes)]),
      },
      ...changesTable(certificate),
      ...foundTables(fit),
    ],
  };
}
