import type { FittedBuild } from '../app/api.ts';
import type { Cause } from '../core/fit/index.ts';
import { part } from './textParts.ts';

/** Repairs told one by one; the rest is counted, and all of them are in `--json`. */
const REPAIRS_TOLD = 5;

const standings = {
  mend: 'to mend',
  corrected: 'already corrected in the table',
  know: 'to know',
} as const satisfies Record<Cause['standing'], string>;

function causes({ fit }: FittedBuild): string[] {
  if (fit.causes.length === 0) return ['Nothing is wrong with it.'];
  return fit.causes.flatMap(({ title, evidence, instruction, standing }, i) => [
    `${i + 1}. ${title} (${standings[standing]})`,
    `   seen:  ${evidence}`,
    `   do:    ${instruction}`,
  ]);
}

function unknowns({ fit }: FittedBuild): string[] {
  return fit.unknowns.flatMap(({ what, why, recordNext }) => [
    `- ${what}: ${why}`,
    `  record next: ${recordNext}`,
  ]);
}

function repairs({ fit }: FittedBuild): string[] {
  const all = fit.recording.repairs;
  const told = all.slice(0, REPAIRS_TOLD).map(({ file, line, what }) => `- ${file}:${line}: ${what}`);
  return all.length > told.length ? [...told, `- and ${all.length - told.length} more, all in --json`] : told;
}

function changes({ fit }: FittedBuild): string[] {
  return (fit.changes ?? []).map(
    (change) =>
      `- ${change.where}: ${change.before} before, ${change.now} now${change.matters ? ', which matters' : ''}`,
  );
}

/** What `fit` prints: the verdict, then what is wrong with the build and the one thing to do about each. */
export function fitText(build: FittedBuild, path: string): string {
  const { fit, isWritten, written, certificate } = build;
  return [
    `${certificate.name}: ${fit.verdict === 'yes' ? 'YES, read by its own table this build meets the need.' : 'NO, this build does not meet the need.'}`,
    ...fit.reasons.map((reason) => `  ${reason}`),
    ...part('What is wrong, worst first', causes(build)),
    ...part('What this recording cannot tell', unknowns(build)),
    ...part('Changed since the table in the file', changes(build)),
    ...part('Repaired while reading', repairs(build)),
    '',
    isWritten
      ? `Wrote the table to ${path}.`
      : fit.asBuilt
        ? 'Nothing was written to the file; --write does.'
        : 'There is no table that could be trusted, so none can be written.',
    ...(written ? [`Wrote ${written.paths.join(', ')}.`] : []),
  ].join('\n');
}

/** The same as data; the rows of the recording are left out, since they are in its own files. */
export function fitDocument({ fit, certificate, isWritten, written }: FittedBuild): Record<string, unknown> {
  const { recording, otherCode, ...found } = fit;
  return {
    command: 'fit',
    ok: fit.verdict === 'yes',
    name: certificate.name,
    ...found,
    otherCode: otherCode && { family: otherCode.code.family, explainedShare: otherCode.explainedShare },
    recording: {
      content: recording.content,
      columns: recording.columns,
      hasTimes: recording.hasTimes,
      samples: certificate.samples,
      repairs: recording.repairs,
    },
    certificate,
    isWritten,
    files: written?.paths ?? [],
  };
}
