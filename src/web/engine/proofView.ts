import type { ProvedDesign } from '../../app/api.ts';
import type { Problem } from '../../core/error/index.ts';
import { budgetPicture, buildsPicture, turnPicture } from '../../core/make/index.ts';
import type { Proof } from '../../core/proof/index.ts';

/** A proof with its pictures, drawn by the code that draws them for the sheet. */
export interface ProofView {
  readonly proof: Proof;
  readonly warnings: readonly Problem[];
  /** SVG, each with its title inside. */
  readonly pictures: { readonly budget: string; readonly builds: string; readonly turn: string };
}

/** A proof as plain data. */
export function proofView({ design, proof, warnings }: ProvedDesign): ProofView {
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
