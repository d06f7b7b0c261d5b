import type { CodeTable } from '../../codes/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscSpec } from '../discSpec.ts';
import { isPierced } from '../form.ts';
import { layStrip } from '../layout/layStrip.ts';
import { layTracks } from '../layout/layTracks.ts';
import { fieldOf } from '../pieces/field.ts';
import { materialGrid } from '../pieces/materialGrid.ts';
import type { RibCost } from '../pieces/ribCost.ts';
import { holdPieces } from '../pieces/ribs.ts';
import { bridgeFaults } from './bridges.ts';
import { stripPlace, type Fault, type PlaceAt } from './fault.ts';
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

/** Tracks where they go, on a disc or along a strip; a strip has no bore that could lie off its middle. */
export function laidOut(code: CodeTable, spec: DiscSpec): DiscPlan {
  if (!spec.strip) return { code, spec, tracks: layTracks(code, spec), ribs: [] };
  const { tracks, layout } = layStrip(code, spec, spec.strip);
  const onStrip = { ...spec, process: { ...spec.process, boreSdMm: 0 } };
  return { code, spec: onStrip, tracks, ribs: [], strip: layout };
}

/**
 * Plans a disc and finds everything wrong with it, without saying how to mend it.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for, with usable sizes. [mm]
 * @param ribCost - What a rib costs; its length, where left out.
 */
export function inspect(code: CodeTable, spec: DiscSpec, ribCost?: RibCost): Inspection {
  const faults = [...(spec.strip ? [] : mountFaults(spec)), ...fitFaults(shortestMarks(code, spec), spec)];
  // Pieces and necks are those of a disc that can be drawn.
  if (faults.length > 0) return { faults, plan: null };
  const plan = laidOut(code, spec);
  // A sheet that carries its pattern: nothing falls out of it, and a corner costs no strength.
  if (!isPierced(spec)) return { faults, plan };
  if (plan.strip) {
    const grid = materialGrid(plan);
    const { sheet } = fieldOf(plan);
    const placeAt: PlaceAt = (across, angle) => stripPlace(sheet.pointAt(angle, across));
    return { faults: [...neckFaults(grid, spec, placeAt), ...bridgeFaults(grid, spec, placeAt)], plan };
  }
  const holding = holdPieces(plan, ribCost);
  const loose = looseFault(holding);
  const grid = materialGrid(holding.plan);
  const weak = [...neckFaults(grid, spec), ...bridgeFaults(grid, spec)];
  return { faults: loose ? [loose, ...weak] : weak, plan: holding.plan };
}
