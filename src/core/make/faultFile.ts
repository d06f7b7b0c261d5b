import type { CodeTable } from '../codes/index.ts';
import { boreCircleMm, discPlace, faultyDisc, type DiscSpec, type FaultPlace } from '../disc/index.ts';
import type { Problem } from '../error/index.ts';
import type { MadeFile } from './madeFile.ts';
import { faultSvg } from './svg/faultSvg.ts';

/** Name of the drawing that shows what is wrong. */
export const FAULT_FILE = 'disc-fault.svg';

/**
 * The drawing of a disc that cannot be made, every fault at its place; for the folder that would have held the result.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for. [mm]
 * @returns The file, or `null` where nothing about the disc is wrong, or its sizes are no sizes.
 * @check src/core/make/svg/faultSvg.test.ts
 */
export function faultFile(code: CodeTable, spec: DiscSpec): MadeFile | null {
  const faulty = faultyDisc(code, spec);
  if (!faulty) return null;
  return { path: FAULT_FILE, content: faultSvg(faulty) };
}

/** Where on the drawing sizes that do not fit each other show, by what is said of them when a file is read. */
const SIZE_PLACES: Readonly<Record<string, (spec: DiscSpec) => FaultPlace>> = {
  'instrument/bore-beyond-hub': ({ bore }) => discPlace(boreCircleMm(bore) / 2, 180),
  'instrument/hub-beyond-rim': ({ hubDiameterMm }) => discPlace(hubDiameterMm / 2, 90),
  'instrument/flat-outside-bore': ({ bore }) => {
    const flat = bore.shape === 'd' ? bore.acrossFlatMm - bore.diameterMm / 2 : 0;
    return flat < 0 ? discPlace(-flat, 180) : discPlace(flat, 0);
  },
};

/** Whether a problem found when the file was read can be shown on a drawing of its sizes. */
export function isOfSizes({ code }: Problem): boolean {
  return Object.hasOwn(SIZE_PLACES, code);
}

/**
 * The drawing of a disc whose sizes do not fit each other: rim, hub, bore and its flat as asked for, a ring at each fault.
 *
 * @param spec - The disc as asked for. [mm]
 * @param problems - What was found when the file was read, n ≥ 0; those of sizes are shown.
 * @check test/journeys/makeFaults.test.ts
 */
export function sizesFile(spec: DiscSpec, problems: readonly Problem[]): MadeFile {
  const faults = problems
    .filter(isOfSizes)
    .map(({ code, what }) => ({ what, places: [SIZE_PLACES[code]!(spec)] }));
  return { path: FAULT_FILE, content: faultSvg({ spec, plan: null, faults }) };
}
