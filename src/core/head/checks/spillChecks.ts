import type { DiscPlan } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import type { Findings } from './findings.ts';
import { spreadAcross } from '../light/edgeSpread.ts';
import type { Aperture, HeadSpec } from '../headSpec.ts';
import type { SwitchLights } from '../circuit/thresholds.ts';

/** Standard deviations of a channel's radius at which its neighbours must still be dark. Common practice, no source. */
const PLACE_SIGMA = 2;

/** Fineness of a spot that is proposed. [mm] */
const STEP_MM = 0.05;

/** The size that reaches over neighbours: its field, its value, and the aperture with another value. */
function acrossSize(aperture: Aperture): {
  field: string;
  sizeMm: number;
  resized(sizeMm: number): Aperture;
} {
  switch (aperture.shape) {
    case 'slit':
      return {
        field: 'head.aperture.lengthMm',
        sizeMm: aperture.lengthMm,
        resized: (lengthMm) => ({ ...aperture, lengthMm }),
      };
    case 'round':
      return {
        field: 'head.aperture.diameterMm',
        sizeMm: aperture.diameterMm,
        resized: (diameterMm) => ({ ...aperture, diameterMm }),
      };
    case 'gaussian':
      return {
        field: 'head.aperture.radiusMm',
        sizeMm: aperture.radiusMm,
        resized: (radiusMm) => ({ ...aperture, radiusMm }),
      };
  }
}

/** From the middle of a track to the nearest window of the next track inwards and outwards; infinite without one. [mm] */
function neighbourGapsMm(disc: DiscPlan, track: number): { inner: number; outer: number } {
  const own = disc.tracks[track]!.midRadiusMm;
  let [inner, outer] = [Infinity, Infinity];
  for (const other of disc.tracks) {
    if (other.midRadiusMm < own) inner = Math.min(inner, own - other.outerRadiusMm);
    if (other.midRadiusMm > own) outer = Math.min(outer, other.innerRadiusMm - own);
  }
  return { inner, outer };
}

/** Share of the spot on neighbours, with its channel in place and off its radius. */
interface Spill {
  readonly track: number;
  readonly placed: number;
  readonly moved: number;
}

/** The track that gets most light from its neighbours. */
function worstSpill(disc: DiscPlan, tracks: readonly number[], aperture: Aperture, off: number): Spill {
  const across = spreadAcross(aperture);
  const spills = tracks.map((track) => {
    const { inner, outer } = neighbourGapsMm(disc, track);
    const at = (move: number): number => across.transmitted(inner + move) + across.transmitted(outer - move);
    return { track, placed: at(0), moved: Math.max(at(off), at(-off)) };
  });
  return spills.reduce((worst, spill) => (spill.moved > worst.moved ? spill : worst), spills[0]!);
}

/** The longest spot that fits, in steps of 0.05 mm; `null` where even that is too long. [mm] */
function sizeThatFits(sizeMm: number, fits: (sizeMm: number) => boolean): number | null {
  let [least, most] = [0, Math.ceil(sizeMm / STEP_MM)];
  while (most - least > 1) {
    const middle = (least + most) >> 1;
    if (fits(middle * STEP_MM)) least = middle;
    else most = middle;
  }
  return least === 0 ? null : Number((least * STEP_MM).toFixed(2));
}

/** Light through the neighbours' windows must never switch a channel; told once, for the track that gets most of it. */
export function spillFindings(
  disc: DiscPlan,
  spec: HeadSpec,
  tracks: readonly number[],
  levels: SwitchLights,
): Findings {
  const off = PLACE_SIGMA * Math.hypot(spec.radialSdMm, disc.spec.process.boreSdMm);
  const room = Math.min(levels.fallingLight, 1 - levels.risingLight);
  const { track, placed, moved } = worstSpill(disc, tracks, spec.aperture, off);
  if (moved < room / 2) return { problems: [], warnings: [] };
  const { field, sizeMm, resized } = acrossSize(spec.aperture);
  const fitting = sizeThatFits(
    sizeMm,
    (size) => worstSpill(disc, tracks, resized(size), off).moved < room / 2,
  );
  const switches = placed >= room;
  const problem: Problem = {
    code: switches ? 'head/spill-switches' : 'head/spill',
    what: switches
      ? `Light through the neighbours' windows alone switches the channel of track ${track}.`
      : `Light through the neighbours' windows comes near to switching the channel of track ${track}.`,
    where: field,
    got: `${showNumber(100 * placed, 2)} % of the spot on neighbours, ${showNumber(100 * moved, 2)} % with the channel ${showMm(off)} off its radius; no track gets more`,
    allowed: `less than ${showNumber(50 * room, 2)} %, half of what switches it`,
    fix:
      fitting === null
        ? `Place channels and bore more truly than ${showMm(off)} (two standard deviations), or make the tracks wider: no spot is short enough.`
        : `Set ${field} to ${fitting} (mm), and put a wall between channels.`,
  };
  return switches ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}
