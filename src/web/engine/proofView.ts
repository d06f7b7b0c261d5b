import { proveInstrument, type ProveRequest } from '../../app/api.ts';
import type { Problem } from '../../core/error/index.ts';
import { budgetPicture, buildsPicture, turnPicture } from '../../core/make/index.ts';
import type { Proof } from '../../core/proof/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';

/** A proof with its pictures, drawn by the code that draws them for the sheet. */
export interface ProofView {
  readonly proof: Proof;
  readonly warnings: readonly Problem[];
  /** SVG, each with its title inside. */
  readonly pictures: { readonly budget: string; readonly builds: string; readonly turn: string };
}

/** A proof as `vanewright prove` gives it, as plain data. */
export async function proofView(files: InstrumentFiles, request: ProveRequest): Promise<ProofView> {
  const { design, proof, warnings } = await proveInstrument(files, request);
  const { need } = design.instrument;
  return {
    proof,
    warnings,
    pictures: {
      budget: budgetPicture(proof).html,
      builds: buildsPicture(proof, need).html,
      turn: turnPicture(proof, need).html,
    },
  };
}
