import { codeCsv, codeJson } from '../codes/index.ts';
import { csvText } from '../report/index.ts';
import { partsList, programFor } from '../program/index.ts';
import { discFiles } from './discFiles.ts';
import type { MadeFile } from './madeFile.ts';
import { assertReadBack } from './readBack/readBack.ts';
import { buildSheet, type ProvedParts } from './sheet/sheet.ts';

/** How each part of a build becomes files; the order is that of the job. */
const makers = {
  disc: ({ disc }: ProvedParts): MadeFile[] => {
    const files = discFiles(disc);
    assertReadBack(disc, files);
    return [
      ...files,
      { path: 'code.csv', content: codeCsv(disc.code) },
      { path: 'code.json', content: codeJson(disc.code) },
    ];
  },
  program: ({ instrument, head }: ProvedParts): MadeFile[] => {
    const { fileName, source } = programFor(instrument, head);
    // The usual editor of such programs opens a file only from a folder of the same name.
    return [{ path: `program/${fileName.replace(/[.]ino$/, '')}/${fileName}`, content: source }];
  },
  parts: ({ instrument, head }: ProvedParts): MadeFile[] => {
    const rows = partsList(instrument, head).map(({ quantity, part, value, note }) => [
      String(quantity),
      part,
      value,
      note,
    ]);
    return [{ path: 'parts.csv', content: csvText(['quantity', 'part', 'value', 'note'], rows) }];
  },
  proof: ({ proof }: ProvedParts): MadeFile[] => [
    { path: 'proof.json', content: `${JSON.stringify(proof, null, 2)}\n` },
  ],
  sheet: (parts: ProvedParts): MadeFile[] => [{ path: 'build-sheet.html', content: buildSheet(parts) }],
};

/** Name of a part that `make` can write. */
export type MakePart = keyof typeof makers;

/** Every part, in the order of the job. */
export const partNames = Object.keys(makers) as readonly MakePart[];

/**
 * Files of the wanted parts of one proved design; equal designs give equal bytes.
 *
 * @throws `make/file-disagrees` when a file of the disc, read back, does not show its code; the program step's problems when the board cannot run this head.
 */
export function makeParts(parts: ProvedParts, wanted: readonly MakePart[]): MadeFile[] {
  return wanted.flatMap((part) => makers[part](parts));
}
