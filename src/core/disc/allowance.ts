import type { Drawn, Process } from './discSpec.ts';
import { measuredProcess } from './measured/corrections.ts';

/** Whether drawings are moved by what the tool takes: `none` where the machine's own setting does that. */
export type Allowance = 'none' | 'drawn';

/** What a process takes at each edge, by its usual or given growth. */
function usualDrawn({ windowGrowthMm }: Process): Drawn {
  return { scale: 1, edgeLossMm: windowGrowthMm / 2, boreAllowanceMm: -windowGrowthMm, footGrowthMm: 0 };
}

/**
 * The process as the rest of the design sees it, and how drawings differ from the part.
 *
 * Drawn for the tool, windows come out as wanted and their growth is 0. Otherwise they grow by as much as was measured,
 * and only the scale of a printer is made good.
 *
 * @param process - As the instrument file gives it. [mm]
 * @param shaftMm - Shaft that was tried in the coupon's holes. [mm]
 * @param allowance - What was asked for; where left out, `drawn` once a coupon was measured, `none` before.
 * @returns `drawn` is `null` where the part is drawn as wanted.
 * @check src/core/disc/allowance.test.ts
 */
export function withAllowance(
  process: Process,
  shaftMm: number,
  allowance?: Allowance,
): { readonly process: Process; readonly drawn: Drawn | null } {
  const measured = measuredProcess(process, shaftMm);
  if (allowance === undefined) return measured;
  const drawn = measured.drawn ?? usualDrawn(process);
  if (allowance === 'drawn') return { process: { ...measured.process, windowGrowthMm: 0 }, drawn };
  if (measured.drawn === null) return measured;
  return {
    process: { ...measured.process, windowGrowthMm: 2 * drawn.edgeLossMm },
    drawn: { ...drawn, edgeLossMm: 0, footGrowthMm: 0 },
  };
}
