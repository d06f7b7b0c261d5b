import { VanewrightError } from '../error/index.ts';
import type { Certificate } from '../fit/index.ts';
import type { Instrument } from '../instrument/index.ts';

/** A certificate as `fit --out` has written it. */
export interface GivenCertificate {
  /** Text of `certificate.json`. */
  readonly json: string;
  readonly html: string;
  readonly pdf: Uint8Array;
  /** Folder it comes from, for messages. */
  readonly from: string;
}

/** What the kit takes of it. */
export type CertificateFigures = Pick<Certificate, 'name' | 'recordedAt' | 'tableHash' | 'passes' | 'rows'>;

function isRow(row: unknown): row is Certificate['rows'][number] {
  if (typeof row !== 'object' || row === null) return false;
  const { figure, found, needed, passes } = row as Record<string, unknown>;
  const isTextOrNull = needed === null || typeof needed === 'string';
  return (
    typeof figure === 'string' &&
    typeof found === 'string' &&
    isTextOrNull &&
    (passes === null || typeof passes === 'boolean')
  );
}

function figuresIn(json: string): CertificateFigures | null {
  let read: unknown;
  try {
    read = JSON.parse(json);
  } catch {
    return null;
  }
  if (typeof read !== 'object' || read === null) return null;
  const { name, recordedAt, tableHash, passes, rows } = read as Record<string, unknown>;
  if (typeof name !== 'string' || typeof recordedAt !== 'string' || typeof passes !== 'boolean') return null;
  if (tableHash !== null && typeof tableHash !== 'string') return null;
  if (!Array.isArray(rows) || !rows.every(isRow)) return null;
  return { name, recordedAt, tableHash, passes, rows };
}

/**
 * The figures of a certificate that belongs to this build.
 *
 * @throws `publish/bad-certificate`, `publish/other-build`
 * @check src/core/publish/publishKit.test.ts
 */
export function certificateFigures(
  { json, from }: GivenCertificate,
  instrument: Instrument,
): CertificateFigures {
  const figures = figuresIn(json);
  if (!figures) {
    throw new VanewrightError({
      code: 'publish/bad-certificate',
      what: 'The certificate cannot be read.',
      where: `${from}/certificate.json`,
      got: JSON.stringify(json.slice(0, 40)),
      allowed: 'the file that `vanewright fit --out` has written',
      fix: 'Run vanewright fit FILE RECORDING... --write --out DIR again.',
    });
  }
  const own = instrument.asBuilt?.tableHash ?? null;
  if (figures.name === instrument.name && figures.tableHash === own) return figures;
  throw new VanewrightError({
    code: 'publish/other-build',
    what: 'The certificate is of another build than the instrument file.',
    where: `${from}/certificate.json`,
    got: `${figures.name}, table ${figures.tableHash ?? 'none'}`,
    allowed: `${instrument.name}, table ${own ?? 'none'}`,
    fix: 'Run vanewright fit FILE RECORDING... --write --out DIR, so that file and certificate are of one turn.',
  });
}
