import { radToDeg } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { Brightness, RingSector } from '../discSpec.ts';
import { notchSector } from '../layout/notchSector.ts';
import { isWindow } from '../layout/windows.ts';
import { fieldGrid, fieldOf, wholeField } from './field.ts';
import type { PolarGrid } from './polarGrid.ts';

/** Copper kept away from every milled edge and from the bore. [mm] @source common practice of board makers, no source. */
const PULLBACK_MM = 0.3;

/** What milling takes or may take: along the edge, round the bore and round the notch. */
function milled(plan: DiscPlan): RingSector[] {
  const { spec } = plan;
  const field = fieldOf(plan);
  const { innerRadiusMm, outerRadiusMm } = field.ring;
  const whole = { fromDeg: 0, toDeg: 360 };
  const edges = [
    { ...whole, innerRadiusMm, outerRadiusMm: innerRadiusMm + PULLBACK_MM },
    { ...whole, innerRadiusMm: outerRadiusMm - PULLBACK_MM, outerRadiusMm },
  ];
  if (plan.strip) {
    const aside = PULLBACK_MM / field.mmPerDeg!;
    const end = field.open[0]!.fromDeg;
    const ring = { innerRadiusMm, outerRadiusMm };
    return [...edges, { ...ring, fromDeg: 0, toDeg: aside }, { ...ring, fromDeg: end - aside, toDeg: end }];
  }
  const notch = notchSector(spec);
  if (!notch) return edges;
  const inner = notch.innerRadiusMm - PULLBACK_MM;
  const aside = radToDeg(Math.asin(PULLBACK_MM / inner));
  return [
    ...edges,
    { innerRadiusMm: inner, outerRadiusMm, fromDeg: notch.fromDeg - aside, toDeg: notch.toDeg + aside },
  ];
}

/**
 * Where copper stays on a board: on the lands where it stops light, on the windows where it gives light back.
 *
 * @param copper - Whether copper counts as light or dark.
 */
export function copperGrid(plan: DiscPlan, copper: Brightness): PolarGrid {
  const field = fieldOf(plan);
  const windows = field.sectorsWhere((level) => isWindow(level, plan.spec));
  if (copper === 'light') return fieldGrid(field, [wholeField(field)], windows);
  return fieldGrid(field, [...windows, ...milled(plan)], []);
}
