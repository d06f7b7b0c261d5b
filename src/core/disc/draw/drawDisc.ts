import { radToDeg } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { Bore } from '../discSpec.ts';
import type { Pen } from '../pen.ts';
import { materialGrid } from '../pieces/materialGrid.ts';
import { outlinesOf, type Outline, type Side } from './outlines.ts';
import { AXIS, sheetPoint } from './sheetPoint.ts';

/** Where a side ends on the sheet. */
function endOf(side: Side): ReturnType<typeof sheetPoint> {
  return side.kind === 'arc'
    ? sheetPoint(side.fromDeg + side.turnDeg, side.radiusMm)
    : sheetPoint(side.angleDeg, side.toMm);
}

function drawCircle(pen: Pen, radiusMm: number, clockwise: boolean): void {
  pen.moveTo(sheetPoint(0, radiusMm));
  pen.arcTo(sheetPoint(180, radiusMm), AXIS, clockwise);
  pen.arcTo(sheetPoint(0, radiusMm), AXIS, clockwise);
  pen.close();
}

function drawOutline(pen: Pen, outline: Outline): void {
  const [first] = outline;
  if (first?.kind !== 'arc') return;
  if (outline.length === 1) return drawCircle(pen, first.radiusMm, first.turnDeg > 0);
  pen.moveTo(sheetPoint(first.fromDeg, first.radiusMm));
  for (const [index, side] of outline.entries()) {
    if (side.kind === 'arc') pen.arcTo(endOf(side), AXIS, side.turnDeg > 0);
    // The last line needs no drawing: closing the outline draws it.
    else if (index < outline.length - 1) pen.lineTo(endOf(side));
  }
  pen.close();
}

/**
 * Half the angle that the flat of a D bore takes from its circle. [deg]
 *
 * @param bore - D bore whose flat lies between its middle and its circle. [mm]
 * @source derived: the flat lies `acrossFlat - radius` from the axis, so cos(half) = that over the radius.
 */
export function flatHalfAngleDeg(bore: Extract<Bore, { shape: 'd' }>): number {
  const radius = bore.diameterMm / 2;
  return radToDeg(Math.acos((bore.acrossFlatMm - radius) / radius));
}

function drawBore(pen: Pen, bore: Bore): void {
  const radius = bore.diameterMm / 2;
  if (bore.shape === 'round') return drawCircle(pen, radius, true);
  const half = flatHalfAngleDeg(bore);
  pen.moveTo(sheetPoint(half, radius));
  pen.arcTo(sheetPoint(360 - half, radius), AXIS, true);
  pen.close();
}

/**
 * Draws a disc with true arcs: outer edge with its notch, bore, then windows from the axis outwards.
 *
 * Material lies left of every outline: the outer edge runs against the clock, every hole with it. The flat of a
 * D bore faces the index mark. Windows that touch are drawn as one, and ribs stand between the parts of a window.
 *
 * @param plan - A disc plan.
 * @param pen - Receives the outlines, y up, axis at the origin. [mm]
 * @check test/journeys/discFiles.test.ts (drawn, read back by separate code, decoded every 0.1 degrees)
 */
export function drawDisc(plan: DiscPlan, pen: Pen): void {
  const grid = materialGrid(plan);
  const outlines = outlinesOf(grid);
  const edge = grid.radiiMm.at(-1)!;
  const atEdge = (outline: Outline) => outline.some((side) => side.kind === 'arc' && side.radiusMm === edge);
  for (const outline of outlines.filter(atEdge)) drawOutline(pen, outline);
  drawBore(pen, plan.spec.bore);
  for (const outline of outlines.filter((candidate) => !atEdge(candidate))) drawOutline(pen, outline);
}
