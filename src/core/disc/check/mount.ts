import { showMm } from '../../units/index.ts';
import type { Bore, DiscSpec } from '../discSpec.ts';
import { boreCircleMm } from '../layout/bore.ts';
import { discPlace, type Fault } from './fault.ts';
import { leastDrawn } from './leastDrawn.ts';

/** Hair by which rounding may miss a minimum that is met. [mm] */
const HAIR_MM = 1e-9;

/** A flat nearer than this to the middle of its bore, or to the circle, is none. [mm] */
const LEAST_FLAT_MM = 0.05;

/** True where a bore is round, or its flat lies between its middle and its circle. */
export function isFlatInBore(bore: Bore): boolean {
  if (bore.shape !== 'd') return true;
  const { acrossFlatMm, diameterMm } = bore;
  return acrossFlatMm >= diameterMm / 2 + LEAST_FLAT_MM && acrossFlatMm <= diameterMm - LEAST_FLAT_MM;
}

function boreFaults(spec: DiscSpec): Fault[] {
  const { bore, hubDiameterMm, process } = spec;
  const least = leastDrawn(spec);
  const widest = hubDiameterMm - 2 * least.wallMm;
  const faults: Fault[] = [];
  if (boreCircleMm(bore) > widest + HAIR_MM) {
    faults.push({
      code: 'disc/bore-beyond-hub',
      what: 'The bore leaves too little of the hub, or cuts into the innermost track.',
      where: 'disc.bore.diameterMm',
      got: `${showMm(boreCircleMm(bore))}${bore.shape === 'hex' ? ' over its corners' : ''} in a hub of ${showMm(hubDiameterMm)}`,
      allowed: `at most ${showMm(Math.max(0, widest))}, so that ${showMm(least.wallMm)} of hub stands round it`,
      at: [discPlace(boreCircleMm(bore) / 2, 180)],
    });
  }
  if (bore.diameterMm < least.windowMm - HAIR_MM) {
    faults.push({
      code: 'disc/bore-too-small',
      what: 'The bore is smaller than any opening the process can make.',
      where: 'disc.bore.diameterMm',
      got: showMm(bore.diameterMm),
      allowed: `${showMm(least.windowMm)} or more (${process.kind})`,
      at: [discPlace(0, 0)],
    });
  }
  if (
    bore.shape === 'd' &&
    !(bore.acrossFlatMm > bore.diameterMm / 2 && bore.acrossFlatMm < bore.diameterMm)
  ) {
    faults.push({
      code: 'disc/flat-not-in-bore',
      what: 'The flat of a D bore must lie between the middle of the bore and its far side.',
      where: 'disc.bore.acrossFlatMm',
      got: `${showMm(bore.shape === 'd' ? bore.acrossFlatMm : 0)} in a bore of ${showMm(bore.diameterMm)}`,
      allowed: `${showMm(bore.diameterMm / 2 + LEAST_FLAT_MM)} to ${showMm(bore.diameterMm - LEAST_FLAT_MM)}`,
      at: [discPlace(Math.max(0, bore.acrossFlatMm - bore.diameterMm / 2), 0)],
    });
  }
  return faults;
}

/** A notch wider than this share of the diameter is no mark but a flat. [-] */
export const WIDEST_NOTCH_SHARE = 0.25;

/** Depths that an index notch may have: seen, and with a wall behind it. [mm] */
function notchDepths(spec: Pick<DiscSpec, 'process' | 'drawn' | 'rimMm'>): {
  shallowest: number;
  deepest: number;
} {
  const least = leastDrawn(spec);
  return { shallowest: least.windowMm / 2, deepest: spec.rimMm - least.wallMm };
}

/**
 * Whether a rim has room for an index notch of some depth.
 *
 * @param spec - Rim [mm] and what the process can make.
 * @param depthMm - Depth of the notch from the edge of the disc. [mm]
 * @check src/core/instrument/discFixes.test.ts
 */
export function holdsNotch(spec: Pick<DiscSpec, 'process' | 'drawn' | 'rimMm'>, depthMm: number): boolean {
  const { shallowest, deepest } = notchDepths(spec);
  return depthMm <= deepest + HAIR_MM && depthMm >= shallowest - HAIR_MM;
}

function notchFaults(spec: DiscSpec): Fault[] {
  const { notch, rimMm, diameterMm } = spec;
  if (notch.widthMm === 0) return [];
  const least = leastDrawn(spec);
  const { shallowest, deepest } = notchDepths(spec);
  const widest = diameterMm * WIDEST_NOTCH_SHARE;
  const faults: Fault[] = [];
  if (!holdsNotch(spec, notch.depthMm)) {
    faults.push({
      code: 'disc/notch-depth',
      what: 'The index notch is too shallow to be seen, leaves too little of the rim, or cuts into the outermost track.',
      where: 'disc.notch.depthMm',
      got: `${showMm(notch.depthMm)} in a rim of ${showMm(rimMm)}`,
      allowed:
        deepest >= shallowest
          ? `${showMm(shallowest)} to ${showMm(deepest)}, so that ${showMm(least.wallMm)} of rim stands behind it`
          : `no notch (disc.notch.widthMm: 0): a rim of ${showMm(rimMm)} has no room for one`,
      at: [discPlace(Math.max(0, diameterMm / 2 - notch.depthMm), 0)],
    });
  }
  if (notch.widthMm < least.windowMm - HAIR_MM || notch.widthMm > widest + HAIR_MM) {
    faults.push({
      code: 'disc/notch-width',
      what: 'The index notch is too narrow to be made, or too wide to point at anything.',
      where: 'disc.notch.widthMm',
      got: showMm(notch.widthMm),
      allowed: `0 mm for none, or ${showMm(least.windowMm)} to ${showMm(widest)}`,
      at: [discPlace(diameterMm / 2, 0)],
    });
  }
  return faults;
}

/**
 * What is wrong with how the disc sits on its shaft and shows its index: bore, hub and notch.
 *
 * @param spec - The disc as asked for, with usable sizes. [mm]
 * @returns Faults, n ≥ 0.
 */
export function mountFaults(spec: DiscSpec): Fault[] {
  return [...boreFaults(spec), ...notchFaults(spec)];
}
