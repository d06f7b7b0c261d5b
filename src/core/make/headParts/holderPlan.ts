import { sheetPoint } from '../../disc/index.ts';
import type { ChannelPlan, HeadPlan } from '../../head/index.ts';
import type { Degrees } from '../../units/index.ts';
import { circleOutline, outlineAt, rectangleOutline, type Outline, type Place } from '../solids/outline.ts';
import { footprintOutline } from './footprint.ts';
import type { Footprint } from '../../head/index.ts';

/** Clear air between the disc's edge and what stands beside it. [mm] @source common practice, no source. */
export const EDGE_CLEARANCE_MM = 2;

/** Depth of the block outside the disc that holders are screwed together through. [mm] */
export const MOUNT_MM = 10;

/** Clearance hole of an M3 screw, and the hole it cuts its own thread into. [mm] @source common practice, no source. */
export const [SCREW_HOLE_MM, SCREW_PILOT_MM] = [3.4, 2.6];

/** Outer wall of a holder; three times two lines of a 0.4 mm nozzle. [mm] */
const SIDE_MM = 2.4;

/** Least width of a bar: two screws side by side. [mm] */
const LEAST_BAR_MM = 20;

/** Farthest that a channel may stand from the head line for the head to be a bar. [deg] */
const BAR_WITHIN_DEG = 30;

/** Free of the shaft all round. [mm] */
const SHAFT_CLEARANCE_MM = 1.5;

/** The plan view that all parts of one head share. */
export interface HolderPlan {
  /** A bar over the head line, or a ring round the shaft where sensors stand all round the disc. */
  readonly style: 'bar' | 'ring';
  /** Outer edge, then the hole round the shaft if there is one. [mm], n = 1..2 */
  readonly outlines: readonly Outline[];
  /** The block outside the disc, same order. [mm], n = 1..2 */
  readonly mount: readonly Outline[];
  /** Middles of the screws. [mm], n = 2..3 */
  readonly screws: readonly Place[];
  /** How near the shaft's axis the holder comes. [mm] */
  readonly innerRadiusMm: number;
  /** Farthest place from the axis. [mm] */
  readonly reachMm: number;
  readonly channels: readonly ChannelPlan[];
}

function places(channels: readonly ChannelPlan[], footprint: Footprint): Place[] {
  const shape = footprintOutline(footprint);
  return channels.flatMap(({ radiusMm, angleDeg }) => outlineAt(shape, radiusMm, angleDeg));
}

function isNearLine(angle: Degrees): boolean {
  return Math.cos((angle * Math.PI) / 180) > Math.cos((BAR_WITHIN_DEG * Math.PI) / 180);
}

function barPlan(head: HeadPlan, footprint: Footprint): HolderPlan {
  const all = places(head.channels, footprint);
  const edge = head.disc.spec.diameterMm / 2 + EDGE_CLEARANCE_MM;
  const half = Math.max(LEAST_BAR_MM / 2, ...all.map(([x]) => Math.abs(x) + SIDE_MM));
  const [low, high] = [Math.min(...all.map(([, y]) => y)) - SIDE_MM, edge + MOUNT_MM];
  const rectangle = (from: number, to: number): Outline =>
    rectangleOutline([2 * half, to - from], [0, (from + to) / 2]);
  const screwX = half - MOUNT_MM / 2;
  return {
    style: 'bar',
    outlines: [rectangle(low, high)],
    mount: [rectangle(edge, high)],
    screws: [-screwX, screwX].map((x) => [x, edge + MOUNT_MM / 2]),
    innerRadiusMm: low,
    reachMm: Math.hypot(half, high),
    channels: head.channels,
  };
}

function ringPlan(head: HeadPlan, footprint: Footprint): HolderPlan {
  const all = places(head.channels, footprint);
  const edge = head.disc.spec.diameterMm / 2 + EDGE_CLEARANCE_MM;
  const inner = Math.min(...all.map(([x, y]) => Math.hypot(x, y))) - SIDE_MM;
  const screws = [60, 180, 300].map((angle): Place => {
    const { xMm, yMm } = sheetPoint(angle, edge + MOUNT_MM / 2);
    return [xMm, yMm];
  });
  const outer = circleOutline(edge + MOUNT_MM);
  return {
    style: 'ring',
    outlines: [outer, circleOutline(Math.max(inner, 0.1))],
    mount: [outer, circleOutline(edge)],
    screws,
    innerRadiusMm: inner,
    reachMm: edge + MOUNT_MM,
    channels: head.channels,
  };
}

/**
 * The plan view of a head: seen from the patterned face, the axis at the origin, the head line straight up.
 *
 * @param head - Channels in their places.
 * @param footprint - Widest outline a part needs at a channel. [mm]
 */
export function holderPlan(head: HeadPlan, footprint: Footprint): HolderPlan {
  const isBar = head.channels.every(({ angleDeg }) => isNearLine(angleDeg));
  return isBar ? barPlan(head, footprint) : ringPlan(head, footprint);
}

/** Least distance of a holder from the axis. [mm] @param shaftMm - Diameter of the shaft. [mm] */
export function leastInnerRadiusMm(shaftMm: number): number {
  return shaftMm / 2 + SHAFT_CLEARANCE_MM;
}

/** A plan turned over, as seen from the other face. */
export function mirrored(outline: Outline): Outline {
  return outline.map(([x, y]): Place => [x === 0 ? 0 : -x, y]).reverse();
}
