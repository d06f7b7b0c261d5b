import { rankCodes, sectorAdvice, type RankedCode, type SectorFit } from '../core/codes/index.ts';
import type { Problem } from '../core/error/index.ts';
import { codeNeedOf } from '../core/instrument/index.ts';
import { compareDesigns, prove, type Comparison, type Proof } from '../core/proof/index.ts';
import type { BuildWorkers, InstrumentFiles } from '../ports/index.ts';
import { sharedMaker } from './buildsInParallel.ts';
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

/** Two designs and how they did in the same builds. */
export interface ComparedDesigns {
  readonly first: Design;
  readonly second: Design;
  readonly comparison: Comparison;
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
export async function proveInstrument(
  files: InstrumentFiles,
  request: ProveRequest,
  workers: BuildWorkers | null = null,
): Promise<ProvedDesign> {
  const design = await readDesign(files, request.path);
  const { instrument, disc, head } = design;
  const { builds, seed } = request;
  const make = await sharedMaker(workers, head, { builds, seed, accuracyDeg: instrument.need.accuracyDeg });
  const proof = prove({ instrument, disc, head, builds, seed, make });
  return { design, proof, warnings: proof.warnings.map(design.placed) };
}

/** Two instruments in the same virtual builds, each held to its own accuracy. */
export async function compareInstruments(
  files: InstrumentFiles,
  request: ProveRequest & { readonly against: string },
): Promise<ComparedDesigns> {
  const [first, second] = await Promise.all([
    readDesign(files, request.path),
    readDesign(files, request.against),
  ]);
  const { builds, seed } = request;
  const own = first.instrument.need.accuracyDeg;
  const comparison = compareDesigns(first.head, second.head, { builds, seed, accuracyDeg: own }, [
    own,
    second.instrument.need.accuracyDeg,
  ]);
  return { first, second, comparison };
}

/** Which codes would serve this very need, and which wind roses its positions fill fairly. */
export function adviseCodes({ instrument }: Pick<Design, 'instrument'>): CodeAdvice {
  return {
    codes: rankCodes(codeNeedOf(instrument)),
    roses: sectorAdvice(instrument.need.positions),
  };
}
