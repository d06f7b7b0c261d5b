import type { DiscSpec } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { circleOutline, outlineAt, rectangleOutline, type Outline } from '../solids/outline.ts';
import { boreIn, holeIn, islandIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit, Span } from '../solids/shapeKit.ts';
import { apertureOutline } from './aperture.ts';
import type { HolderPlan } from './holderPlan.ts';

/** Material round the bore of a bar-shaped jig. [mm] */
const HUB_MM = 5;

/** Thickness of the jig, whatever the disc's: stiff enough to hold. [mm] */
const [LEAST_MM, THROUGH_MM] = [2, 1];

function outline(spec: DiscSpec, plan: HolderPlan, print: PrintSetting): Outline[] {
  const radius = islandIn(print, spec.diameterMm) / 2;
  return plan.style === 'ring' ? [circleOutline(radius)] : [circleOutline(spec.bore.diameterMm / 2 + HUB_MM)];
}

/** The notch of the disc, cut at the same place. */
function notch(kit: ShapeKit, spec: DiscSpec, print: PrintSetting, through: Span): Shape[] {
  const { widthMm, depthMm } = spec.notch;
  if (widthMm === 0) return [];
  const y = spec.diameterMm / 2 - depthMm / 2;
  return [kit.prism([rectangleOutline([holeIn(print, widthMm), depthMm + 2], [0, y + 1])], through)];
}

/**
 * Alignment jig: goes on the shaft in place of the disc, and lets light through to every channel at once only when
 * the head stands true.
 *
 * Turn and shift the head until all channels read their highest together; then screw it down. The bar's end carries the
 * disc's index notch at disc angle 0.
 *
 * @param head - Disc and aperture.
 */
export function alignmentJig(kit: ShapeKit, plan: HolderPlan, head: HeadPlan, print: PrintSetting): Shape {
  const { spec } = head.disc;
  const thickness = Math.max(LEAST_MM, spec.thicknessMm);
  const through: Span = [-THROUGH_MM, thickness + THROUGH_MM];
  const hub = kit.prism(outline(spec, plan, print), [0, thickness]);
  const openings = plan.channels.map(({ radiusMm, angleDeg }) =>
    kit.prism([outlineAt(apertureOutline(head.spec.aperture, print), radiusMm, angleDeg)], through),
  );
  const half = Math.max(...plan.outlines[0]!.map(([x]) => Math.abs(x)));
  const end = islandIn(print, spec.diameterMm) / 2;
  const whole =
    plan.style === 'ring'
      ? hub
      : hub.plus(kit.box([-half, half], [0, end], [0, thickness]).common(kit.cylinder(end, [0, thickness])));
  return whole.minus(
    kit.prism([boreIn(print, spec.bore)], through),
    ...openings,
    ...notch(kit, spec, print, through),
  );
}
