import type { PublishedKit } from '../../app/api.ts';
import { problemText } from '../../core/error/index.ts';
import { part } from '../textParts.ts';

/** Whether the design reads right, and the build too where it was measured. */
const isGood = ({ proof, kit }: PublishedKit): boolean =>
  proof.verdict === 'yes' && (kit.certificate?.passes ?? true);

/** What `publish` prints. */
export function publishText(published: PublishedKit, out: string): string {
  const { kit, written, leftOut, proof, design } = published;
  const { certificate } = kit;
  const hasPhotos = kit.files.some(({ path }) => path.startsWith('photos/'));
  const measured = certificate
    ? `Certificate of ${certificate.recordedAt}: ${certificate.passes ? 'pass' : 'FAIL'}.`
    : design.instrument.asBuilt
      ? 'The finished build was turned by hand, but no certificate is in the kit: name it with --fit-folder.'
      : 'No finished build was measured: every figure is designed or proved.';
  return [
    `Wrote ${written.paths.length} files to ${out}. Open ${out}/index.html; kit.zip holds all of it.`,
    measured,
    proof.verdict === 'yes'
      ? 'The proof says yes: this design will read right.'
      : `The proof says NO, so think before others build it: ${proof.reasons.join(' ')}`,
    ...part(
      'What others may do',
      kit.terms.map(({ files, says }) => `${files}: ${says}`),
    ),
    ...part('Photos still to take', kit.missingPhotos),
    ...part('Before you publish', [
      'The instrument file is in the kit, with the place it names.',
      ...(hasPhotos ? ['Photos are copied as they are; many cameras write the place into them.'] : []),
    ]),
    ...(written.setAside.length > 0
      ? [`Kept your own version of changed files as: ${written.setAside.join(', ')}`]
      : []),
    ...leftOut.flatMap((problem) => ['', 'Not made:', problemText(problem)]),
  ].join('\n');
}

/** The document that `publish --json` prints, without its command. */
export function publishDocument(
  published: PublishedKit,
  out: string,
): { readonly ok: boolean } & Record<string, unknown> {
  const { kit, written, leftOut, proof, design } = published;
  return {
    ok: isGood(published),
    name: design.instrument.name,
    verdict: proof.verdict,
    reasons: proof.reasons,
    folder: out,
    files: written.paths,
    removed: written.removed,
    kept: written.kept,
    setAside: written.setAside,
    leftOut,
    certificate: kit.certificate && {
      recordedAt: kit.certificate.recordedAt,
      tableHash: kit.certificate.tableHash,
      passes: kit.certificate.passes,
    },
    licences: kit.terms.map(({ kind, licence, says }) => ({ kind, licence: licence?.spdx ?? null, says })),
    missingPhotos: kit.missingPhotos,
    tested: kit.tested,
  };
}
