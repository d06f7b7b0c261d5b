import { rankCodes, sectorAdvice, type RankedCode, type SectorFit } from '../core/codes/index.ts';
import type { Problem } from '../core/error/index.ts';
import { codeNeedOf } from '../core/instrument/index.ts';
import { prove, type Proof } from '../core/proof/index.ts';
import type { InstrumentFiles } from '../ports/index.ts';
import { readDesign, type Design } from './design.ts';

/** What to prove, and with how many virtual builds. */
export interface ProveRequest {
  readonly path: string;
  readonly builds: number;
  readonly seed: number;
}

/** The design with its proof; warnings carry their place in the file. */
export interface ProvedDesign {
  readonly design: Design;
  readonly proof: Proof;
  readonly warnings: readonly Problem[];
}

/** What a code could be chosen by: every code for this need, best first, and the roses this count divides. */
export interface CodeAdvice {
  readonly codes: readonly RankedCode[];
  readonly roses: readonly SectorFit[];
}

/** Virtual builds where the maker names no number: enough for a yield within 2 %. */
export const DEFAULT_BUILDS = 1000;

/** Seed where the maker names none, so that two runs agree. */
export const DEFAULT_SEED = 1;

/** Will this instrument read right, and what should be tightened first. */
export async function proveInstrument(files: InstrumentFiles, request: ProveRequest): Promise<ProvedDesign> {
  const design = await readDesign(files, request.path);
  const { instrument, disc, head } = design;
  const proof = prove({ instrument, disc, head, builds: request.builds, seed: request.seed });
  return { design, proof, warnings: proof.warnings.map(design.placed) };
}

/** Which codes would serve this very design, and which wind roses its positions fill fairly. */
export function adviseCodes({ instrument }: Design): CodeAdvice {
  return {
    codes: rankCodes(codeNeedOf(instrument)),
    roses: sectorAdvice(instrument.need.positions),
  };
}
