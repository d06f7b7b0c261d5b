import type { CodeTable } from '../codes/index.ts';
import { faultyDisc, type DiscSpec } from '../disc/index.ts';
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
