import type { DiscSpec } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import type { ChannelPlan } from '../../head/index.ts';
import { showMm } from '../../units/index.ts';
import { circleOutline, outlineAt, rectangleOutline } from '../solids/outline.ts';
import { holeIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit, Span } from '../solids/shapeKit.ts';
import { POCKET_PLAY_MM } from './crowding.ts';
import { SCREW_HOLE_MM, type HolderPlan } from './holderPlan.ts';
import type { Footprint, SlotBody } from '../../head/index.ts';

/** Wall round the pair; its grip on the back; foot plate below. [mm] */
const [WALL_MM, GRIP_MM, FOOT_MM] = [2.4, 4, 3];

/** Clear air between the disc and each arm. [mm] @source common practice, no source. */
const ARM_CLEARANCE_MM = 0.5;

/** From the light to the back of the pair. [mm] */
function lightToBack(body: SlotBody): number {
  return body.depthMm - body.tipToLightMm;
}

/** Outline of one pair with its walls, round its light. [mm] */
export function slotFootprint(body: SlotBody): Footprint {
  const across = 2 * (lightToBack(body) + WALL_MM);
  return { shape: 'box', alongMm: body.alongMm + POCKET_PLAY_MM + 2 * WALL_MM, acrossMm: across };
}

/** A wider hub moves a single track outwards; several tracks need another code. */
function shallowCure(spec: DiscSpec, channels: readonly ChannelPlan[], reach: number): string {
  const isSingle = new Set(channels.map(({ track }) => track)).size === 1;
  if (!isSingle) return 'Set disc.code to single-track-gray, or parts.sensorPart to round-3mm.';
  // The track's middle lies half-way between hub and rim.
  const hub = Math.ceil(2 * (spec.diameterMm / 2 - 2 * reach + spec.rimMm));
  return `Set disc.hubDiameterMm to ${hub}, which moves the track outwards.`;
}

/**
 * Tracks that a slotted pair cannot reach from the disc's edge, and discs too thick for its slot.
 *
 * @returns `make/slot-too-shallow`, `make/slot-too-narrow`; n ≥ 0
 */
export function slotProblems(body: SlotBody, spec: DiscSpec, channels: readonly ChannelPlan[]): Problem[] {
  const reach = body.slotDepthMm - body.tipToLightMm - ARM_CLEARANCE_MM;
  const deepest = Math.min(...channels.map(({ radiusMm }) => radiusMm));
  const depth = spec.diameterMm / 2 - deepest;
  const problems: Problem[] = [];
  if (depth > reach) {
    problems.push({
      code: 'make/slot-too-shallow',
      what: 'The innermost track lies deeper than the slot of the pair reaches from the edge of the disc.',
      where: 'parts.sensorPart',
      got: `a track ${showMm(depth)} from the edge`,
      allowed: `${showMm(reach)} at most for a ${body.title}`,
      fix: shallowCure(spec, channels, reach),
    });
  }
  const thickest = body.slotMm - 2 * ARM_CLEARANCE_MM;
  if (spec.thicknessMm > thickest) {
    problems.push({
      code: 'make/slot-too-narrow',
      what: 'The disc is too thick to turn freely in the slot of the pair.',
      where: 'disc.thicknessMm',
      got: showMm(spec.thicknessMm),
      allowed: `${showMm(thickest)} at most for a ${body.title}`,
      fix: `Set disc.thicknessMm to ${thickest}.`,
    });
  }
  return problems;
}

/** Height of the middle of the slot over the foot. [mm] */
export function slotMiddleMm(body: SlotBody): number {
  return FOOT_MM + body.heightMm / 2;
}

/**
 * Bracket that holds slotted pairs by their backs, arms inwards round the disc's edge.
 *
 * @param body - The pair.
 */
export function slotBracket(kit: ShapeKit, plan: HolderPlan, body: SlotBody, print: PrintSetting): Shape {
  const back = lightToBack(body);
  const along = holeIn(print, body.alongMm + POCKET_PLAY_MM);
  const top = FOOT_MM + holeIn(print, body.heightMm + POCKET_PLAY_MM);
  const shape = (
    width: number,
    from: number,
    to: number,
    { radiusMm, angleDeg }: ChannelPlan,
    height: Span,
  ): Shape =>
    kit.prism(
      [outlineAt(rectangleOutline([width, to - from], [0, (from + to) / 2]), radiusMm, angleDeg)],
      height,
    );
  const blocks = plan.channels.map((channel) =>
    shape(along + 2 * WALL_MM, back - GRIP_MM, back + WALL_MM, channel, [0, top + WALL_MM]),
  );
  const pockets = plan.channels.map((channel) => shape(along, -body.depthMm, back, channel, [FOOT_MM, top]));
  const leads = plan.channels.map((channel) =>
    shape(along - 1, back - 1, back + WALL_MM + 1, channel, [FOOT_MM + 1, top - 1]),
  );
  const through: Span = [-1, FOOT_MM + 1];
  const screws = plan.screws.map((at) =>
    kit.prism([circleOutline(holeIn(print, SCREW_HOLE_MM) / 2, at)], through),
  );
  return kit
    .prism(plan.mount, [0, FOOT_MM])
    .plus(...blocks)
    .minus(...pockets, ...leads, ...screws);
}
