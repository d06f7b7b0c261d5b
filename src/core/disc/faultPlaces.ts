import type { CodeTable } from '../codes/index.ts';
import type { FaultPlace } from './check/fault.ts';
import { formProblems, withUsualForm } from './check/formProblems.ts';
import { inspect, laidOut } from './check/inspect.ts';
import { unusableSizes } from './check/usableSizes.ts';
import type { DiscPlan } from './discPlan.ts';
import type { DiscSpec } from './discSpec.ts';
import { bandWidthMm } from './layout/layTracks.ts';

/** A fault of a disc and the places of the drawing where it shows. */
export interface PlacedFault {
  readonly code: string;
  readonly what: string;
  readonly places: readonly FaultPlace[];
}

/** A faulty disc as far as it can be drawn. */
export interface FaultyDisc {
  readonly faults: readonly PlacedFault[];
  readonly spec: DiscSpec;
  /** Its tracks laid out, ribs left out; `null` where they have no room at all. */
  readonly plan: DiscPlan | null;
}

/**
 * Where on its drawing a disc is faulty.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for. [mm]
 * @returns Faults with their places, or `null` where there is none, or where its sizes are no sizes.
 */
export function faultyDisc(code: CodeTable, spec: DiscSpec): FaultyDisc | null {
  if (unusableSizes(spec).length > 0) return null;
  const ofForm = formProblems(code, spec);
  // Where the form is wrong, a disc of the usual form is looked at; its places are none of a strip.
  const { faults } = inspect(code, ofForm.length > 0 ? withUsualForm(spec) : spec);
  const shown = ofForm.length > 0 && spec.strip ? ofForm : [...ofForm, ...faults];
  if (shown.length === 0) return null;
  const hasRoom = bandWidthMm(code.tracks.length, spec) > 0 && spec.hubDiameterMm < spec.diameterMm;
  return {
    faults: shown.map(({ code: name, what, at }) => ({ code: name, what, places: at ?? [] })),
    spec,
    plan: hasRoom ? laidOut(code, spec) : null,
  };
}
