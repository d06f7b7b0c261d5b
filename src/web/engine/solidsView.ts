import type { Design } from '../../app/api.ts';
import type { Problem } from '../../core/error/index.ts';
import { discSolids, solidParts, type Solid } from '../../core/make/index.ts';

/** One body to look at, as it is printed. */
export interface SolidView extends Solid {
  /** Width, depth and height. [mm], n = 3 */
  readonly sizeMm: readonly [number, number, number];
}

/** Every solid of a design. */
export interface SolidsView {
  readonly disc: readonly SolidView[];
  readonly parts: readonly SolidView[];
  readonly problems: readonly Problem[];
}

/** Every solid of a design, made by the code that makes its files. */
export async function solidsView({ instrument, disc, head, placed }: Design): Promise<SolidsView> {
  const { solids, problems } = await solidParts(instrument, disc, head);
  return {
    disc: discSolids(disc).map(sized),
    parts: solids.map(sized),
    problems: problems.map(placed),
  };
}

function sized(solid: Solid): SolidView {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const [at, value] of solid.mesh.positionsMm.entries()) {
    low[at % 3] = Math.min(low[at % 3]!, value);
    high[at % 3] = Math.max(high[at % 3]!, value);
  }
  return { ...solid, sizeMm: [high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!] };
}
