import type { DiscPlan } from '../discPlan.ts';
import type { Bore } from '../discSpec.ts';
import { drawnOf } from '../form.ts';
import { boreCircleMm, boreSides, widenedBore } from '../layout/bore.ts';
import type { Pen } from '../pen.ts';
import { fieldOf } from '../pieces/field.ts';
import { materialGrid } from '../pieces/materialGrid.ts';
import type { PolarGrid } from '../pieces/polarGrid.ts';
import { drawnOutline } from './corners.ts';
import { outlinesOf, type Outline } from './outlines.ts';
import { scaledPen } from './scaledPen.ts';
import type { Sheet } from './sheet.ts';
import { AXIS, sheetPoint } from './sheetPoint.ts';

/**
 * Draws one outline, moved out of its material.
 *
 * @param outMm - How far every side is moved. [mm]
 */
export function drawOutline(pen: Pen, outline: Outline, outMm: number, sheet: Sheet): void {
  const { corners, sides } = drawnOutline(outline, outMm, sheet);
  const placeOf = (index: number) => {
    const { angleDeg, radiusMm } = corners[index % corners.length]!;
    return sheet.pointAt(angleDeg, radiusMm);
  };
  pen.moveTo(placeOf(0));
  for (const [index, side] of sides.entries()) {
    const to = placeOf(index + 1);
    if (side.kind === 'arc' && !sheet.isUnrolled) pen.arcTo(to, AXIS, side.turnDeg > 0);
    // The last line needs no drawing: closing the outline draws it.
    else if (index < sides.length - 1) pen.lineTo(to);
  }
  pen.close();
}

/** Draws the hole on the shaft, clockwise. */
export function drawBore(pen: Pen, bore: Bore): void {
  const radius = boreCircleMm(bore) / 2;
  const [first, ...rest] = boreSides(bore);
  if (first && rest.length === 0) {
    pen.moveTo(sheetPoint(0, radius));
    pen.arcTo(sheetPoint(180, radius), AXIS, true);
    pen.arcTo(sheetPoint(0, radius), AXIS, true);
    return pen.close();
  }
  pen.moveTo(sheetPoint(first!.fromDeg, radius));
  for (const [index, { fromDeg, spanDeg, isFlat }] of [first!, ...rest].entries()) {
    const to = sheetPoint(fromDeg + spanDeg, radius);
    if (!isFlat) pen.arcTo(to, AXIS, true);
    else if (index < rest.length) pen.lineTo(to);
  }
  pen.close();
}

/**
 * Draws the outlines of a grid: outer edge with its notch, bore, then the others from the axis outwards.
 *
 * Material lies left of every outline: the outer edge runs against the clock, every hole with it. Every side is drawn
 * as far from where it is wanted as `drawn` says.
 *
 * @param grid - One body of the plan.
 * @param plan - A disc plan.
 * @param pen - Receives the outlines, y up. [mm]
 * @param holds - Whether its cells are material, which the tool makes smaller, or openings, which it makes larger.
 */
export function drawGrid(
  grid: PolarGrid,
  plan: DiscPlan,
  pen: Pen,
  holds: 'material' | 'openings' = 'material',
): void {
  const { inside, sheet } = fieldOf(plan);
  const isHub = inside === 'material' && grid.filled[0] === 1;
  const outlines = outlinesOf(grid, isHub ? 'material' : 'nothing');
  const edge = grid.radiiMm.at(-1)!;
  const { scale, edgeLossMm, boreAllowanceMm } = drawnOf(plan.spec);
  const onto = scaledPen(pen, scale);
  const outMm = holds === 'material' ? edgeLossMm : -edgeLossMm;
  const draw = (outline: Outline): void => drawOutline(onto, outline, outMm, sheet);
  const atEdge = (outline: Outline) => outline.some((side) => side.kind === 'arc' && side.radiusMm === edge);
  outlines.filter(atEdge).forEach(draw);
  if (isHub) drawBore(onto, widenedBore(plan.spec.bore, boreAllowanceMm));
  outlines.filter((candidate) => !atEdge(candidate)).forEach(draw);
}

/**
 * Draws the material of a disc with true arcs.
 *
 * The flat of a D bore faces the index mark. Windows that touch are drawn as one, and ribs stand between the parts of
 * a window.
 *
 * @param plan - A disc plan.
 * @param pen - Receives the outlines, y up, axis at the origin. [mm]
 * @check test/journeys/discFiles.test.ts (drawn, read back by separate code, decoded every 0.1 degrees)
 */
export function drawDisc(plan: DiscPlan, pen: Pen): void {
  drawGrid(materialGrid(plan), plan, pen);
}
