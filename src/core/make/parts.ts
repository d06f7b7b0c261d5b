import { codeCsv, codeJson } from '../codes/index.ts';
import type { Problem } from '../error/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { csvText } from '../report/index.ts';
import {
  netlist,
  netlistText,
  partsList,
  programFiles,
  programProblems,
  schematicPicture,
} from '../program/index.ts';
import { bundlePapers, bundleZip } from './bundle/bundleFiles.ts';
import { couponParts } from './coupon/couponParts.ts';
import { discFiles } from './discFiles.ts';
import type { SheetSetting } from './pdf/blankDocument.ts';
import { discPdf } from './pdf/onDemand.ts';
import type { MadeFile } from './madeFile.ts';
import { assertReadBack } from './readBack/readBack.ts';
import { assertBundle } from './readBack/readBundle.ts';
import { proofJson } from './proofJson.ts';
import { buildSheet, type ProvedParts } from './sheet/sheet.ts';
import { solidFiles } from './solidFiles.ts';
import { solidParts, type SolidParts } from './solidParts.ts';

/** What making one part gave. */
export interface Made {
  readonly files: readonly MadeFile[];
  /** What this design cannot have, with the cure; the files are whole without it. */
  readonly leftOut: readonly Problem[];
}

/** A design on its way to files. */
interface Job extends ProvedParts {
  /** Printed parts beside the disc, worked out once. */
  printed(): Promise<SolidParts>;
  /** Paper and font of drawing sheets. */
  sheetSetting(): Promise<SheetSetting>;
  /** Files of the parts before this one. */
  readonly before: readonly MadeFile[];
}

type Maker = (job: Job) => MadeFile[] | Promise<Made>;

/** The program's files, or why there is none: a code in colours is read by no program of ours yet. */
async function programMade(instrument: Instrument, head: HeadPlan): Promise<Made> {
  const problems = programProblems(instrument, head);
  if (problems.length > 0 && problems.every(({ code }) => code === 'program/three-levels')) {
    return { files: [], leftOut: problems };
  }
  const files = programFiles(instrument, head);
  return { files: files.map(({ path, content }) => ({ path: `program/${path}`, content })), leftOut: [] };
}

/** How each part of a build becomes files; the order is that of the job. */
const makers = {
  coupon: async ({ instrument }) => {
    const printed = await couponParts(instrument);
    const title = `${instrument.name}: coupon`;
    return { files: solidFiles('coupon', title, printed, instrument.parts.bedMm), leftOut: printed.problems };
  },
  disc: async ({ instrument, disc, head, sheetSetting }) => {
    const pdf = await discPdf({ name: instrument.name, head }, await sheetSetting());
    const drawn = [...discFiles(disc), { path: 'disc.pdf', content: pdf }];
    assertReadBack(disc, drawn);
    const files = [
      ...drawn,
      { path: 'code.csv', content: codeCsv(disc.code) },
      { path: 'code.json', content: codeJson(disc.code) },
    ];
    return { files, leftOut: [] };
  },
  prints: async ({ instrument, printed: printedParts }) => {
    const printed = await printedParts();
    const title = `${instrument.name}: printed parts`;
    return { files: solidFiles('prints', title, printed, instrument.parts.bedMm), leftOut: printed.problems };
  },
  program: ({ instrument, head }) => programMade(instrument, head),
  wiring: ({ instrument, head }) => [
    { path: 'wiring/schematic.svg', content: `${schematicPicture(instrument, head).html}\n` },
    { path: 'wiring/netlist.txt', content: netlistText(netlist(instrument, head)) },
  ],
  parts: ({ instrument, head }) => {
    const rows = partsList(instrument, head).map(({ quantity, part, value, note }) => [
      String(quantity),
      part,
      value,
      note,
    ]);
    return [{ path: 'parts.csv', content: csvText(['quantity', 'part', 'value', 'note'], rows) }];
  },
  proof: ({ proof }) => [{ path: 'proof.json', content: proofJson(proof) }],
  sheet: (parts) => [{ path: 'build-sheet.html', content: buildSheet(parts) }],
  bundle: async ({ instrument, head, printed, before }) => {
    const papers = bundlePapers({ instrument, head }, (await printed()).solids);
    return { files: [...papers, bundleZip([...before, ...papers])], leftOut: [] };
  },
} satisfies Record<string, Maker>;

/** Name of a part that `make` can write. */
export type MakePart = keyof typeof makers;

/** Every part, in the order of the job. */
export const partNames = Object.keys(makers) as readonly MakePart[];

/**
 * Files of the wanted parts of one proved design; equal designs give equal bytes.
 *
 * @param sheetSetting - Paper and font of drawing sheets, asked for only when a sheet is drawn.
 *
 * The bundle comes last and holds the files of all parts made with it.
 *
 * @throws `make/file-disagrees` when a file, read back, does not show the code or does not say what it should; the program step's problems
 * when the board cannot run this head.
 */
export async function makeParts(
  parts: ProvedParts,
  wanted: readonly MakePart[],
  sheetSetting: () => Promise<SheetSetting>,
): Promise<Made> {
  const made: Made[] = [];
  let printing: Promise<SolidParts> | null = null;
  const printed = () => (printing ??= solidParts(parts.instrument, parts.disc, parts.head));
  for (const part of wanted) {
    const result = await makers[part]({
      ...parts,
      printed,
      sheetSetting,
      before: made.flatMap(({ files }) => files),
    });
    made.push(Array.isArray(result) ? { files: result, leftOut: [] } : (result as Made));
  }
  const files = made.flatMap((each) => each.files);
  const { code } = parts.disc;
  const programWords = parts.instrument.asBuilt?.positions.map(({ word }) => word) ?? code.words;
  assertBundle(files, { code, programWords, channels: parts.head.channels.length });
  return { files, leftOut: made.flatMap(({ leftOut }) => leftOut) };
}
