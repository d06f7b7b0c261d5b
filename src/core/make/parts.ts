import { codeCsv, codeJson } from '../codes/index.ts';
import type { Problem } from '../error/index.ts';
import { csvText } from '../report/index.ts';
import { partsList, programFor } from '../program/index.ts';
import { couponParts } from './coupon/couponParts.ts';
import { discFiles } from './discFiles.ts';
import type { MadeFile } from './madeFile.ts';
import { assertReadBack } from './readBack/readBack.ts';
import { buildSheet, type ProvedParts } from './sheet/sheet.ts';
import { solidFiles } from './solidFiles.ts';
import { solidParts } from './solidParts.ts';

/** What making one part gave. */
export interface Made {
  readonly files: readonly MadeFile[];
  /** What this design cannot have, with the cure; the files are whole without it. */
  readonly leftOut: readonly Problem[];
}

type Maker = (parts: ProvedParts) => MadeFile[] | Promise<Made>;

/** How each part of a build becomes files; the order is that of the job. */
const makers = {
  coupon: async ({ instrument }) => {
    const printed = await couponParts(instrument);
    const title = `${instrument.name}: coupon`;
    return { files: solidFiles('coupon', title, printed, instrument.parts.bedMm), leftOut: printed.problems };
  },
  disc: ({ disc }) => {
    const files = discFiles(disc);
    assertReadBack(disc, files);
    return [
      ...files,
      { path: 'code.csv', content: codeCsv(disc.code) },
      { path: 'code.json', content: codeJson(disc.code) },
    ];
  },
  prints: async ({ instrument, disc, head }) => {
    const printed = await solidParts(instrument, disc, head);
    const title = `${instrument.name}: printed parts`;
    return { files: solidFiles('prints', title, printed, instrument.parts.bedMm), leftOut: printed.problems };
  },
  program: ({ instrument, head }) => {
    const { fileName, source } = programFor(instrument, head);
    // The usual editor of such programs opens a file only from a folder of the same name.
    return [{ path: `program/${fileName.replace(/[.]ino$/, '')}/${fileName}`, content: source }];
  },
  parts: ({ instrument, head }) => {
    const rows = partsList(instrument, head).map(({ quantity, part, value, note }) => [
      String(quantity),
      part,
      value,
      note,
    ]);
    return [{ path: 'parts.csv', content: csvText(['quantity', 'part', 'value', 'note'], rows) }];
  },
  proof: ({ proof }) => [{ path: 'proof.json', content: `${JSON.stringify(proof, null, 2)}\n` }],
  sheet: (parts) => [{ path: 'build-sheet.html', content: buildSheet(parts) }],
} satisfies Record<string, Maker>;

/** Name of a part that `make` can write. */
export type MakePart = keyof typeof makers;

/** Every part, in the order of the job. */
export const partNames = Object.keys(makers) as readonly MakePart[];

/**
 * Files of the wanted parts of one proved design; equal designs give equal bytes.
 *
 * @throws `make/file-disagrees` when a file of the disc, read back, does not show its code; the program step's problems
 * when the board cannot run this head.
 */
export async function makeParts(parts: ProvedParts, wanted: readonly MakePart[]): Promise<Made> {
  const made: Made[] = [];
  for (const part of wanted) {
    const result = await makers[part](parts);
    made.push(Array.isArray(result) ? { files: result, leftOut: [] } : (result as Made));
  }
  return { files: made.flatMap(({ files }) => files), leftOut: made.flatMap(({ leftOut }) => leftOut) };
}
