import type { DiscSpec } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import type { ChannelPlan } from '../../head/index.ts';
import { showDegrees, showMm, showNumber, turnBetween, type Degrees } from '../../units/index.ts';
import { outlineAt, type Outline } from '../solids/outline.ts';
import { acrossMm, footprintOutline, grownFootprint } from './footprint.ts';
import { outlineGapMm } from './outlineGap.ts';
import {
  partBodies,
  type FacingBody,
  type Footprint,
  type PartName,
  type ReflectanceBody,
} from '../../head/index.ts';

/** Play of a part in its pocket, both sides together. [mm] @source common practice, no source. */
export const POCKET_PLAY_MM = 0.2;

/** Finest turn that a stagger is named to, and the widest one that is looked at. [deg] */
const [STAGGER_STEP, MOST_STAGGER] = [1, 90];

/** Widest outline that a part needs anywhere along its pocket. */
export function pocketFootprint(body: FacingBody | ReflectanceBody): Footprint {
  const collar = body.kind === 'facing' ? body.collar : null;
  const widest: Footprint = collar ? { shape: 'round', diameterMm: collar.diameterMm } : body.footprint;
  return grownFootprint(widest, POCKET_PLAY_MM);
}

type Placed = Pick<ChannelPlan, 'channel' | 'track' | 'radiusMm' | 'angleDeg'>;

interface Pair {
  readonly first: Placed;
  readonly second: Placed;
  readonly gapMm: number;
}

/** The two pockets with least material between them; `null` for a single channel. */
function tightestPair(channels: readonly Placed[], footprint: Footprint): Pair | null {
  const shape = footprintOutline(footprint);
  const reach = 2 * Math.max(...shape.map(([x, y]) => Math.hypot(x, y)));
  const pockets = channels.map(({ radiusMm, angleDeg }): Outline => outlineAt(shape, radiusMm, angleDeg));
  let tightest: Pair | null = null;
  for (const [j, second] of channels.entries()) {
    for (const [i, first] of channels.slice(0, j).entries()) {
      // A first guess from the middles leaves out pairs that are far apart.
      const apart = middlesApart(first, second) - reach;
      if (tightest && apart > tightest.gapMm) continue;
      const gapMm = apart > reach ? apart : outlineGapMm(pockets[i]!, pockets[j]!);
      if (!tightest || gapMm < tightest.gapMm) tightest = { first, second, gapMm };
    }
  }
  return tightest;
}

/** Distance of two channels. [mm] @source cosine rule. */
function middlesApart(a: Placed, b: Placed): number {
  const turn = (turnBetween(a.angleDeg, b.angleDeg) * Math.PI) / 180;
  return Math.sqrt(a.radiusMm ** 2 + b.radiusMm ** 2 - 2 * a.radiusMm * b.radiusMm * Math.cos(turn));
}

/** Every second channel, counted outwards, turned one way by half the stagger and the others the other way. */
function staggered(channels: readonly Placed[], stagger: Degrees): Placed[] {
  return [...channels]
    .sort((a, b) => a.radiusMm - b.radiusMm)
    .map((channel, order) => ({
      ...channel,
      angleDeg: channel.angleDeg + (order % 2 === 0 ? -1 : 1) * (stagger / 2),
    }));
}

/** True where each channel has a track of its own, so that track and channel may turn together. */
export function mayStagger(channels: readonly Placed[]): boolean {
  return channels.length > 1 && new Set(channels.map(({ track }) => track)).size === channels.length;
}

/**
 * The least stagger that keeps all pockets apart. [deg]
 *
 * @param channels - Sensors in their places.
 * @param footprint - What each needs. [mm]
 * @param wallMm - Material between two of them. [mm]
 * @returns Whole degrees; `null` where the code has several channels on a track, or no stagger helps.
 */
export function staggerFor(
  channels: readonly Placed[],
  footprint: Footprint,
  wallMm: number,
): Degrees | null {
  if (!mayStagger(channels)) return null;
  for (let stagger = STAGGER_STEP; stagger <= MOST_STAGGER; stagger += STAGGER_STEP) {
    const pair = tightestPair(staggered(channels, stagger), footprint);
    if (pair && pair.gapMm >= wallMm) return stagger;
  }
  return null;
}

/** Disc on which the same tracks lie far enough apart for sensors in one line; `null` beyond what the tool plans. [mm] */
function widerDisc(spec: DiscSpec, tracks: number, pitchMm: number): number | null {
  // tracks · pitch = radius - rim - hub radius + web
  const diameter = Math.ceil(2 * (tracks * pitchMm - spec.webMm + spec.rimMm + spec.hubDiameterMm / 2));
  return diameter <= 600 && diameter > spec.diameterMm ? diameter : null;
}

/** Which side of the disc the parts stand on. */
export type Side = 'sensor' | 'light';

/** Parts that do the same job in less room; nothing but a colour sensor tells colours apart by itself. */
function smallerBodies(now: FacingBody | ReflectanceBody, { side, channels, wallMm }: Crowd): PartName[] {
  if (now === partBodies['colour-sensor']) return [];
  return (Object.keys(partBodies) as PartName[]).filter((name) => {
    const body = partBodies[name];
    if (body.kind !== 'facing' || !(side === 'sensor' ? body.senses : body.lights)) return false;
    const pair = tightestPair(channels, pocketFootprint(body));
    return pair !== null && pair.gapMm >= wallMm;
  });
}

/** What else of the design decides whether the parts have room. */
export interface Crowd {
  readonly side: Side;
  readonly spec: DiscSpec;
  readonly channels: readonly Placed[];
  /** Least wall between two pockets. [mm] */
  readonly wallMm: number;
}

function cures(now: FacingBody | ReflectanceBody, crowd: Crowd, footprint: Footprint): string[] {
  const { side, spec, channels, wallMm } = crowd;
  // Along a strip no bar reaches.
  const stagger = spec.strip ? null : staggerFor(channels, footprint, wallMm);
  const wider = mayStagger(channels) ? widerDisc(spec, channels.length, acrossMm(footprint) + wallMm) : null;
  const smaller = smallerBodies(now, crowd);
  return [
    ...(stagger === null
      ? []
      : [
          `set head.staggerDeg to ${showNumber(stagger, 0)}: every second ${side} then stands ${showDegrees(stagger)} beside its neighbours, its track turned with it`,
        ]),
    ...(smaller.length === 0 ? [] : [`set parts.${side}Part to ${smaller.join(' or ')}`]),
    ...(wider === null ? [] : [`make disc.diameterMm ${wider}`]),
  ];
}

/**
 * Sensors or lights that stand so close that no wall is left between their pockets.
 *
 * @param body - The part that is placed at every channel.
 * @param crowd - Channels, walls and disc.
 * @returns One `make/parts-too-close` at most; its cure was computed and fits.
 */
export function crowdingProblems(body: FacingBody | ReflectanceBody, crowd: Crowd): Problem[] {
  const footprint = pocketFootprint(body);
  const pair = tightestPair(crowd.channels, footprint);
  if (!pair || pair.gapMm >= crowd.wallMm) return [];
  const found = cures(body, crowd, footprint);
  const fix = found.join('; or ');
  return [
    {
      code: 'make/parts-too-close',
      what: `The ${crowd.side}s of channels ${pair.first.channel} and ${pair.second.channel} stand too close for a wall between them.`,
      where: `parts.${crowd.side}Part`,
      got: `${showMm(pair.gapMm)} between pockets for a ${body.title}, at radii ${showMm(pair.first.radiusMm)} and ${showMm(pair.second.radiusMm)}`,
      allowed: `${showMm(crowd.wallMm)} or more`,
      fix:
        fix === ''
          ? 'Ask for fewer positions, or choose a code with more room between its channels.'
          : `${fix[0]!.toUpperCase()}${fix.slice(1)}.`,
    },
  ];
}
