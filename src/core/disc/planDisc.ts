import type { CodeTable } from '../codes/index.ts';
import { BrokenPromise, throwIfAny, type Problem } from '../error/index.ts';
import type { Fault, PlacedProblem } from './check/fault.ts';
import { fixText } from './check/fixText.ts';
import { formProblems, withUsualForm } from './check/formProblems.ts';
import { inspect } from './check/inspect.ts';
import { unusableSizes } from './check/usableSizes.ts';
import type { DiscPlan } from './discPlan.ts';
import type { DiscSpec } from './discSpec.ts';
import { readingProblems } from './measured/readingProblems.ts';
import type { RibCost } from './pieces/ribCost.ts';

/** What was measured and cannot be right. */
function measuredProblems({ process }: DiscSpec): Problem[] {
  return process.measured ? readingProblems(process, process.measured, 'disc.process.measured') : [];
}

/** Places are for the drawing; a problem says its own in words. */
function withoutPlace({ code, what, where, got, allowed, fix }: PlacedProblem): Problem {
  return { code, what, where, got, allowed, fix };
}

function asProblem({ code, what, where, got, allowed }: Fault, fix: string): Problem {
  return { code, what, where, got, allowed, fix };
}

/**
 * Where everything on a disc goes, checked against the process that shall make it.
 *
 * Tracks of equal width lie between hub and rim, with a web between. Pieces that would fall out of a cut or printed
 * disc are found by joining cells that share an edge, and held by ribs along track edges; film holds everything.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for. [mm]
 * @param ribCost - What a rib costs, where ribs must hold the disc together; its length, where left out.
 * @returns The plan: one piece, with nothing smaller than the process can make.
 * @throws `disc/size-not-usable`, `disc/print-scaled`, `disc/edge-implausible`, `disc/marks-disagree` and
 * `disc/contrast-impossible` together, or everything else found at once: `disc/bore-beyond-hub`, `disc/bore-too-small`,
 * `disc/flat-not-in-bore`, `disc/notch-depth`, `disc/notch-width`, `disc/web-too-thin`, `disc/rim-too-thin`,
 * `disc/tracks-do-not-fit`, `disc/window-too-narrow`, `disc/land-too-narrow`, `disc/loose-piece`,
 * `disc/windows-meet-at-corner`, `disc/neck-too-narrow`, `disc/gap-too-narrow`, `disc/bridge-too-weak`,
 * `disc/form-not-for-process`, `disc/levels-need-colours`, `disc/colours-missing`, `disc/colours-beyond-process`,
 * `disc/layer-not-in-thickness`, `disc/strip-too-short`, `disc/strip-needs-webs`.
 * @check test/journeys/discFiles.test.ts
 */
export function planDisc(code: CodeTable, spec: DiscSpec, ribCost?: RibCost): DiscPlan {
  throwIfAny([...unusableSizes(spec), ...measuredProblems(spec)]);
  const ofForm = formProblems(code, spec);
  const sized = ofForm.length > 0 ? withUsualForm(spec) : spec;
  const { faults, plan } = inspect(code, sized, ribCost);
  if (faults.length > 0 || ofForm.length > 0) {
    const fix = faults.length > 0 ? fixText(code, sized) : '';
    throwIfAny([...ofForm.map(withoutPlace), ...faults.map((fault) => asProblem(fault, fix))]);
  }
  if (!plan) throw new BrokenPromise('A disc without faults was not planned.');
  return plan;
}
