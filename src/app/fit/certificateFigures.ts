import {
  certificateOrigin,
  certificateTables,
  certificateVerdict,
  NOTHING_CHANGED,
  type Certificate,
  type CertificateTable,
  type Fit,
} from '../../core/fit/index.ts';
import type { FiguresPage, FiguresTable } from '../../core/make/index.ts';

/** Widths of the columns of what was found and what is not known. [-], sum 1 */
const WORDS_SHARES = [0.24, 0.4, 0.36];

/** What has changed, or that nothing has; nothing at all for a first certificate. */
function changesTable(changes: CertificateTable | null): FiguresTable[] {
  if (!changes) return [];
  const rows = changes.rows.length > 0 ? changes.rows : [['', NOTHING_CHANGED, '', '']];
  return [{ ...changes, rows, shares: [0.2, 0.34, 0.34, 0.12] }];
}

/** The bench certificate as figures for one sheet of paper; the pictures are on the page of HTML. */
export function certificateFigures(certificate: Certificate, fit: Fit): FiguresPage {
  const { figures, changes, causes, unknowns } = certificateTables(certificate, fit);
  return {
    title: `Bench certificate: ${certificate.name}`,
    lines: [certificateVerdict(certificate), certificateOrigin(certificate), ...certificate.reasons],
    tables: [
      { ...figures, shares: [0.26, 0.46, 0.2, 0.08] },
      ...changesTable(changes),
      ...[causes, unknowns]
        .filter(({ rows }) => rows.length > 0)
        .map((found) => ({ ...found, shares: WORDS_SHARES })),
    ],
  };
}
