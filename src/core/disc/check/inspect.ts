import type { CodeTable } from '../../codes/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscSpec } from '../discSpec.ts';
import { layTracks } from '../layout/layTracks.ts';
import { materialGrid } from '../pieces/materialGrid.ts';
import { holdPieces } from '../pieces/ribs.ts';
import type { Fault } from './fault.ts';
import { fitFaults, shortestMarks } from './fit.ts';
import { looseFault } from './looseFault.ts';
import { mountFaults } from './mount.ts';
import { neckFaults } from './necks.ts';

/** What came of planning a disc: the plan, or what is wrong with it. */
export interface Inspection {
  readonly faults: readonly Fault[];
  /** `null` where the tracks do not fit, so that there is nothing to draw. */
  readonly plan: DiscPlan | null;
}

/**
 * Plans a disc and finds everything wrong with it, without saying how to mend it.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for, with usable sizes. [mm]
 */
export function inspect(code: CodeTable, spec: DiscSpec): Inspection {
  const faults = [...mountFaults(spec), ...fitFaults(shortestMarks(code, spec), spec)];
  // Pieces and necks are those of a disc that can be drawn.
  if (faults.length > 0) return { faults, plan: null };
  const plan: DiscPlan = { code, spec, tracks: layTracks(code, spec), ribs: [] };
  // Film carries its print: nothing falls out of it, and a corner costs no strength.
  if (spec.process.kind === 'film') return { faults, plan };
  const holding = holdPieces(plan);
  const loose = looseFault(holding);
  const necks = neckFaults(materialGrid(holding.plan), spec);
  return { faults: loose ? [loose, ...necks] : necks, plan: holding.plan };
}
