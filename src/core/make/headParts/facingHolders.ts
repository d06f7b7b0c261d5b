import type { HeadPlan } from '../../head/index.ts';
import { circleOutline, outlineAt, type Outline } from '../solids/outline.ts';
import { holeIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit, Span } from '../solids/shapeKit.ts';
import { apertureOutline, apertureSizeMm } from './aperture.ts';
import { POCKET_PLAY_MM } from './crowding.ts';
import { acrossMm, footprintOutline, grownFootprint } from './footprint.ts';
import { mirrored, SCREW_HOLE_MM, type HolderPlan } from './holderPlan.ts';
import type { FacingBody, Footprint, ReflectanceBody } from '../../head/index.ts';

/** Thickness of the plate with the openings: five layers of 0.2 mm. [mm] */
export const MASK_MM = 1;

/** Length of the tunnel between opening and sensor: keeps light from beside out. [mm] */
export const TUNNEL_MM = 4;

/** Ledge that stops a part in its pocket, on each side. [mm] */
const LEDGE_MM = 0.5;

/** Height of a holder that stands on its mask. [mm] */
export interface HolderHeights {
  /** From the mask's outer face to where the part's tip rests. [mm] */
  readonly tipMm: number;
  /** To the collar, or to the part's back. [mm] */
  readonly shoulderMm: number;
  readonly totalMm: number;
}

/** Heights of the holder of a part, with or without a tunnel before it. */
export function holderHeights(body: FacingBody | ReflectanceBody, tunnelMm: number): HolderHeights {
  const collar = body.kind === 'facing' ? body.collar : null;
  const shoulderMm = MASK_MM + tunnelMm + body.lengthMm;
  return { tipMm: MASK_MM + tunnelMm, shoulderMm, totalMm: shoulderMm + (collar?.thickMm ?? 0) };
}

/** What one channel's openings are made from, all round the origin. */
interface Cut {
  readonly outline: Outline;
  readonly height: Span;
}

/** How far a cut reaches through a face, so that nothing thin is left. [mm] */
const THROUGH_MM = 1;

function pocketCuts(body: FacingBody | ReflectanceBody, print: PrintSetting, heights: HolderHeights): Cut[] {
  const drawn = (footprint: Footprint, play: number): Outline => {
    // Growing by what the print eats keeps every side of the pocket right.
    const asMade = grownFootprint(footprint, play);
    return footprintOutline(grownFootprint(asMade, holeIn(print, acrossMm(asMade)) - acrossMm(asMade)));
  };
  const { tipMm, shoulderMm, totalMm } = heights;
  const tunnel = drawn(body.footprint, POCKET_PLAY_MM - 2 * LEDGE_MM);
  const collar = body.kind === 'facing' ? body.collar : null;
  return [
    ...(tipMm > MASK_MM ? [{ outline: tunnel, height: [MASK_MM, tipMm + THROUGH_MM] as const }] : []),
    { outline: drawn(body.footprint, POCKET_PLAY_MM), height: [tipMm, totalMm + THROUGH_MM] },
    ...(collar
      ? [
          {
            outline: drawn({ shape: 'round', diameterMm: collar.diameterMm }, POCKET_PLAY_MM),
            height: [shoulderMm, totalMm + THROUGH_MM] as const,
          },
        ]
      : []),
  ];
}

/** A narrow groove at the end of the head line, so that both holders can be put the same way. */
function lineMark(kit: ShapeKit, plan: HolderPlan, heightMm: number): Shape {
  const outer = Math.max(...plan.outlines[0]!.map(([, y]) => y));
  return kit.box([-0.5, 0.5], [outer - 0.8, outer + 1], [-THROUGH_MM, heightMm + THROUGH_MM]);
}

function holder(
  kit: ShapeKit,
  plan: HolderPlan,
  cuts: readonly Cut[],
  print: PrintSetting,
  heightMm: number,
): Shape {
  const body = kit.prism(plan.outlines, [0, heightMm]);
  const through: Span = [-THROUGH_MM, heightMm + THROUGH_MM];
  const screws = plan.screws.map((at) =>
    kit.prism([circleOutline(holeIn(print, SCREW_HOLE_MM) / 2, at)], through),
  );
  const openings = plan.channels.flatMap(({ radiusMm, angleDeg }) =>
    cuts.map(({ outline, height }) => kit.prism([outlineAt(outline, radiusMm, angleDeg)], height)),
  );
  return body.minus(...screws, ...openings, lineMark(kit, plan, heightMm));
}

/**
 * Sensor holder, lying on the face that looks at the disc: openings of the head's aperture, a tunnel behind each with
 * walls between, and a pocket with a ledge for each sensor, put in from behind.
 *
 * @param head - Gives the aperture.
 * @param body - The sensor.
 */
export function sensorHolder(
  kit: ShapeKit,
  plan: HolderPlan,
  { head, body, print }: { head: HeadPlan; body: FacingBody; print: PrintSetting },
): Shape {
  const heights = holderHeights(body, TUNNEL_MM);
  const opening = apertureOutline(head.spec.aperture, print);
  const cuts: Cut[] = [
    { outline: opening, height: [-THROUGH_MM, MASK_MM + THROUGH_MM] },
    ...pocketCuts(body, print, heights),
  ];
  return holder(kit, plan, cuts, print, heights.totalMm);
}

/** Wider than the sensor's opening by this, so that light fills it even when the two are not quite in line. [mm] */
const LIGHT_BEYOND_MM = 1.5;

/**
 * Light holder, lying on the face that looks at the disc, so turned over against the plan view.
 *
 * @param head - Gives the aperture, which the light's opening surrounds.
 * @param body - The light.
 */
export function lightHolder(
  kit: ShapeKit,
  plan: HolderPlan,
  { head, body, print }: { head: HeadPlan; body: FacingBody; print: PrintSetting },
): Shape {
  const heights = holderHeights(body, 0);
  const widest = acrossMm(body.footprint) - 2 * LEDGE_MM;
  const wanted = Math.max(...apertureSizeMm(head.spec.aperture)) + LIGHT_BEYOND_MM;
  const opening = circleOutline(holeIn(print, Math.min(widest, wanted)) / 2);
  const cuts: Cut[] = [
    { outline: opening, height: [-THROUGH_MM, MASK_MM + THROUGH_MM] },
    ...pocketCuts(body, print, heights),
  ];
  return holder(kit, turnedOverPlan(plan), cuts, print, heights.totalMm);
}

/** The same plan seen from the other face. */
export function turnedOverPlan(plan: HolderPlan): HolderPlan {
  return {
    ...plan,
    outlines: plan.outlines.map(mirrored),
    mount: plan.mount.map(mirrored),
    screws: plan.screws.map(([x, y]) => [-x, y]),
    channels: plan.channels.map((channel) => ({ ...channel, angleDeg: (360 - channel.angleDeg) % 360 })),
  };
}

/** Holder of reflectance pairs, lying on the face that looks at the disc; each pair looks out through its pocket. */
export function reflectanceHolder(
  kit: ShapeKit,
  plan: HolderPlan,
  { body, print }: { body: ReflectanceBody; print: PrintSetting },
): Shape {
  const heights = holderHeights(body, 0);
  const window = grownFootprint(body.footprint, POCKET_PLAY_MM - 2 * LEDGE_MM);
  const cuts: Cut[] = [
    { outline: footprintOutline(window), height: [-THROUGH_MM, MASK_MM + THROUGH_MM] },
    ...pocketCuts(body, print, heights),
  ];
  return holder(kit, plan, cuts, print, heights.totalMm);
}

/** Block between the two holders outside the disc; sets the air on both sides of it. @param heightMm - [mm] */
export function spacer(kit: ShapeKit, plan: HolderPlan, print: PrintSetting, heightMm: number): Shape {
  const through: Span = [-THROUGH_MM, heightMm + THROUGH_MM];
  const screws = plan.screws.map((at) =>
    kit.prism([circleOutline(holeIn(print, SCREW_HOLE_MM) / 2, at)], through),
  );
  return kit.prism(plan.mount, [0, heightMm]).minus(...screws, lineMark(kit, plan, heightMm));
}
