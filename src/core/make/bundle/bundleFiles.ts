import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { strToU8, zipSync } from 'fflate';
import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { csvText } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { CAUTIONS_DEFER, cautionsFor } from '../cautions.ts';
import { explainPage } from '../explain/explainPage.ts';
import type { MadeFile } from '../madeFile.ts';
import type { Solid } from '../solids/solid.ts';
import { discSolids } from '../stl/discSolids.ts';
import { jobTimes } from './jobTimes.ts';
import { licencesText } from './licences.ts';
import { massCsv, massRows } from './masses.ts';

/** Moment written for every file of a zip, so that equal designs give equal bytes; noon is the same day everywhere. */
const FIXED_TIME = '1985-06-01T12:00:00';

function cautionsText(instrument: Instrument): string {
  const cautions = cautionsFor(instrument).map(
    ({ title, sentences, source }) =>
      `${title}\n${sentences.map((sentence) => `- ${sentence}`).join('\n')}\n(${source})`,
  );
  return `${[...cautions, CAUTIONS_DEFER].join('\n\n')}\n`;
}

/**
 * The papers of a bundle: how this disc works, how long machines take, what parts weigh, cautions and licences.
 *
 * @param design - The instrument and its planned head.
 * @param printed - Printed parts beside the disc.
 * @returns Files; equal designs give equal bytes.
 * @check src/core/make/bundle/bundle.test.ts
 */
export function bundlePapers(
  { instrument, head }: { readonly instrument: Instrument; readonly head: HeadPlan },
  printed: readonly Solid[],
): MadeFile[] {
  const times = jobTimes(head.disc, discSolids(head.disc), printed);
  return [
    { path: 'how-it-works.html', content: explainPage({ instrument, head }) },
    {
      path: 'job-times.csv',
      content: csvText(
        ['job', 'minutes', 'reckoned with'],
        times.map(({ job, minutes, assumption }) => [job, showNumber(minutes, 0), assumption]),
      ),
    },
    { path: 'masses.csv', content: massCsv(massRows(head.disc, printed)) },
    { path: 'CAUTIONS.txt', content: cautionsText(instrument) },
    { path: 'LICENCES.txt', content: licencesText() },
  ];
}

/** The content of a file as it is written: text in UTF-8. */
export function bytesOf({ content }: MadeFile): Uint8Array {
  return typeof content === 'string' ? strToU8(content) : content;
}

/**
 * Checksums of files, in the format that the common `sha256sum -c` reads.
 *
 * @source FIPS 180-4 (SHA-256).
 * @check src/core/make/bundle/bundle.test.ts (sha256sum)
 */
export function checksumText(files: readonly MadeFile[]): string {
  return files.map((file) => `${bytesToHex(sha256(bytesOf(file)))}  ${file.path}\n`).join('');
}

/**
 * All files of a build in one zip, with a list of their checksums.
 *
 * @param files - In order; paths differ.
 * @returns `bundle.zip`; equal files give equal bytes in every time zone.
 * @source APPNOTE.TXT, .ZIP File Format Specification 6.3.
 * @check src/core/make/bundle/bundle.test.ts (unzip, sha256sum)
 */
export function bundleZip(files: readonly MadeFile[]): MadeFile {
  const all = [...files, { path: 'SHA256SUMS', content: checksumText(files) }];
  const entries = all.map((file) => [file.path, bytesOf(file)] as const);
  return {
    path: 'bundle.zip',
    content: zipSync(Object.fromEntries(entries), { level: 9, mtime: FIXED_TIME }),
  };
}
