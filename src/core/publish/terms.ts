import { VanewrightError } from '../error/index.ts';
import { licences, type FileKind, type Licence } from '../make/index.ts';

/** What the files of a kind are called, and what they are. */
const kinds: readonly { readonly kind: FileKind; readonly files: string }[] = [
  { kind: 'drawings', files: 'drawings and parts to cut or print, and the instrument file' },
  { kind: 'program', files: 'the program for the controller' },
  { kind: 'texts', files: 'pages, lists and photos' },
  { kind: 'data', files: 'measured figures and tables' },
];

/** What others may do with the files of a kind. */
export interface Terms {
  readonly kind: FileKind;
  readonly files: string;
  /** `null` where none was given. */
  readonly licence: Licence | null;
  /** In plain words. */
  readonly says: string;
}

/** Names of the licences that may be given. */
export const licenceNames: readonly string[] = licences.map(({ spdx }) => spdx);

function saysOf(licence: Licence | null, by: string | null): string {
  if (licence) return `${licence.spdx}, ${licence.name}: others ${licence.others}.`;
  return `No licence is given, so nobody may copy them without asking ${by ?? 'the maker'}.`;
}

/**
 * What others may do with each kind of file.
 *
 * @param given - Names of licences; each goes to the kinds of file that it is written for.
 * @param by - Who made it; `null` where that is not told.
 * @returns One row a kind, in the order of the job.
 * @throws `publish/two-licences` where two are given for one kind.
 * @check src/core/publish/publishKit.test.ts
 */
export function termsOf(given: readonly string[], by: string | null): Terms[] {
  const chosen = licences.filter(({ spdx }) => given.includes(spdx));
  return kinds.map(({ kind, files }) => {
    const suiting = chosen.filter((licence) => licence.kinds.includes(kind));
    const [licence = null, second] = suiting;
    if (second) {
      throw new VanewrightError({
        code: 'publish/two-licences',
        what: `Two licences are given for the same kind of file: ${files}.`,
        where: '--licence',
        got: suiting.map(({ spdx }) => spdx).join(' and '),
        allowed: 'one licence for each kind of file',
        fix: `Leave out ${second.spdx}.`,
      });
    }
    return { kind, files, licence, says: saysOf(licence, by) };
  });
}

/** The terms as the text that lies beside the files. */
export function termsText(terms: readonly Terms[], by: string | null): string {
  const rows = terms.map(({ kind, files, says }) => `${kind}: ${files}\n  ${says}`);
  return `${[
    `What you may do with these files${by ? `, made by ${by.replace(/\s+/g, ' ')}` : ''}`,
    ...rows,
    'These are plain words, not legal advice. The text of each licence counts.',
  ].join('\n\n')}\n`;
}
