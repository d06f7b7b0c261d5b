import type { Fit } from '../fit.ts';
import type { Certificate } from './certificate.ts';

/** One table of a certificate as text, for whatever prints it. */
export interface CertificateTable {
  readonly title: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The tables of a certificate. */
export interface CertificateTables {
  readonly figures: CertificateTable;
  /** `null` where there is no certificate before; without rows where nothing has changed. */
  readonly changes: CertificateTable | null;
  readonly causes: CertificateTable;
  readonly unknowns: CertificateTable;
}

/** Said in place of an empty table of changes. */
export const NOTHING_CHANGED = 'Nothing has changed that can be told.';

const passText = (passes: boolean | null): string => (passes === null ? '' : passes ? 'pass' : 'FAIL');

/** Where a certificate comes from, in a line. */
export function certificateOrigin({ recordedAt, tableHash, files, samples, repairs }: Certificate): string {
  return `Recorded ${recordedAt}. Table ${tableHash ?? 'none'}. From ${files.join(', ')}: ${samples} samples, ${repairs} repairs listed.`;
}

/** Its verdict, in a line. */
export function certificateVerdict({ passes }: Certificate): string {
  return passes
    ? 'PASS: read by its table, this build meets the need.'
    : 'FAIL: this build does not meet the need.';
}

/** What a certificate says in tables: the same words on the page and on the sheet. */
export function certificateTables(
  { rows, changes }: Certificate,
  { causes, unknowns }: Fit,
): CertificateTables {
  return {
    figures: {
      title: 'Figures',
      headings: ['figure', 'found', 'needed', ''],
      rows: rows.map(({ figure, found, needed, passes }) => [figure, found, needed ?? '', passText(passes)]),
    },
    changes: changes && {
      title: 'Since the certificate before',
      headings: ['where', 'before', 'now', ''],
      rows: changes.map(({ where, before, now, matters }) => [
        where,
        before,
        now,
        matters ? 'look at it' : '',
      ]),
    },
    causes: {
      title: 'What was found',
      headings: ['what', 'evidence', 'what to do'],
      rows: causes.map(({ title, evidence, instruction }) => [title, evidence, instruction]),
    },
    unknowns: {
      title: 'What this recording cannot tell',
      headings: ['what', 'why', 'record next'],
      rows: unknowns.map(({ what, why, recordNext }) => [what, why, recordNext]),
    },
  };
}
