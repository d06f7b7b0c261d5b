import {
  drawnOf,
  fieldOf,
  formOf,
  groundLevel,
  isWindow,
  levelCountOf,
  levelGrid,
  materialGrid,
  steppedGrid,
  widenedBore,
  type DiscPlan,
  type PolarGrid,
} from '../../disc/index.ts';
import type { Mesh, Solid } from '../solids/solid.ts';
import { faceMesh } from './faceMesh.ts';
import { solidMesh } from './solidMesh.ts';

/** First layer of a print. [mm] @source common practice, no source: half the width of a 0.4 mm nozzle. */
const FIRST_LAYER_MM = 0.2;

/** A solid of a plan, in millimetres as drawn. */
function meshOfGrid(plan: DiscPlan, grid: PolarGrid, zMm: readonly number[], outMm: number): Mesh {
  const { sheet, inside } = fieldOf(plan);
  const { scale, boreAllowanceMm, footGrowthMm } = drawnOf(plan.spec);
  const isRoundBore = inside === 'material' && grid.filled[0]! > 0;
  const bore = isRoundBore ? widenedBore(plan.spec.bore, boreAllowanceMm) : null;
  const face = faceMesh(grid, { bore, sheet }, outMm);
  // Only what lies on the printer's bed is squeezed.
  const hasFoot = footGrowthMm > 0 && zMm[0] === 0 && zMm[1]! > FIRST_LAYER_MM;
  const foot = hasFoot
    ? { face: faceMesh(grid, { bore, sheet }, outMm - footGrowthMm), layerMm: FIRST_LAYER_MM }
    : null;
  const mesh = solidMesh(face, zMm, foot);
  if (scale === 1) return mesh;
  // A print that comes out smaller does so across; layers keep their height.
  const positionsMm = mesh.positionsMm.map((value, at) => (at % 3 === 2 ? value : value * scale));
  return { ...mesh, positionsMm };
}

/** One body a level, let into a base whose own face is the ground. */
function inlaySolids(plan: DiscPlan, colours: readonly string[], depthMm: number): Solid[] {
  const { thicknessMm } = plan.spec;
  const ground = groundLevel(plan);
  const floor = thicknessMm - depthMm;
  // Bodies share their walls: moving them would open gaps, so nothing is allowed for here.
  const base = meshOfGrid(
    plan,
    steppedGrid(plan, (level) => level !== ground),
    [0, floor, thicknessMm],
    0,
  );
  const levels = ([0, 1, 2] as const).slice(0, levelCountOf(plan)).filter((level) => level !== ground);
  return [
    { name: 'disc-base', colour: colours[ground]!, mesh: base },
    ...levels.map((level) => ({
      name: `disc-level-${level}`,
      colour: colours[level]!,
      mesh: meshOfGrid(plan, levelGrid(plan, level), [floor, thicknessMm], 0),
    })),
  ];
}

/**
 * The disc as solids: one, or one a material; axis at the origin, patterned face up, standing on z = 0.
 *
 * Meshed ring by ring on shared vertices, so that each is watertight by construction; arcs are followed to 0.01 mm.
 *
 * @param plan - A disc plan.
 * @returns Solids; none for a print or a board, whose pattern has no thickness. [mm]
 * @check test/journeys/discForms.test.ts (admesh calls them watertight, volume is area times thickness)
 */
export function discSolids(plan: DiscPlan): Solid[] {
  const form = formOf(plan.spec);
  const { thicknessMm } = plan.spec;
  const { edgeLossMm } = drawnOf(plan.spec);
  if (form.kind === 'through-cut') {
    return [{ name: 'disc', mesh: meshOfGrid(plan, materialGrid(plan), [0, thicknessMm], edgeLossMm) }];
  }
  if (form.kind === 'relief') {
    const isLight = (level: 0 | 1 | 2): boolean => isWindow(level, plan.spec);
    const grid = steppedGrid(plan, isLight, form.raised === 'dark' ? 'sunk' : 'raised');
    return [{ name: 'disc', mesh: meshOfGrid(plan, grid, [0, form.floorMm, thicknessMm], edgeLossMm) }];
  }
  return form.kind === 'inlay' ? inlaySolids(plan, form.colours, form.depthMm) : [];
}
