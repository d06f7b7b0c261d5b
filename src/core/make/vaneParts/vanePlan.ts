import { VanewrightError, type Problem } from '../../error/index.ts';
import { degToRad, showNumber } from '../../units/index.ts';
import { PLASTIC_KG_PER_M3, STEEL_BARS_MM, STEEL_KG_PER_M3, VANE_ARM, tubeKgPerM } from './materials.ts';
import { finAreaForM2, vaneResponse, windMomentNm, type VaneResponse } from './vaneMotion.ts';

/** What a vane must do, and what it may weigh. */
export interface VaneWant {
  /** ζ, at least. [-] */
  readonly damping: number;
  /** Wind in which it must still turn. [m/s] */
  readonly startMPerS: number;
  /** How far off the wind it may stay in that wind. [deg] */
  readonly startWithinDeg: number;
  /** Moment that just begins to turn it, measured with a thread and a weight. [N mm] */
  readonly frictionNmm: number;
  readonly finThicknessMm: number;
  /** Span of the fin over its depth. [-] */
  readonly aspectRatio: number;
  /** Largest fin, and longest arm. [mm] */
  readonly bedMm: number;
  readonly longestArmMm: number;
}

/**
 * What is asked of a vane until the maker says otherwise.
 *
 * @source starting threshold 0.5 m/s to within 5 degrees, damping 0.4 to 0.7: EPA-454/R-99-005, sections 2.2 and 5;
 * 0.3 meets the need of WMO-No. 8: Wieringa, J. Appl. Meteor. 6, 1114 (1967). Friction: common practice, no source
 * (a dry 5 mm bearing needs a hundredth of it, a greased one about this).
 */
export const VANE_DEFAULTS: VaneWant = {
  damping: 0.3,
  startMPerS: 0.5,
  startWithinDeg: 5,
  frictionNmm: 0.1,
  finThicknessMm: 0.6,
  aspectRatio: 2,
  bedMm: 200,
  longestArmMm: 600,
};

/** Where a vane's parts go and what they weigh. Distances are from the axis, tail positive. */
export interface VanePlan {
  readonly fin: { readonly spanMm: number; readonly depthMm: number; readonly thicknessMm: number };
  /** From the axis to a quarter of the fin's depth. [mm] */
  readonly armMm: number;
  /** Tube, end to end; its front end lies `frontMm` before the axis. [mm] */
  readonly tubeMm: number;
  readonly frontMm: number;
  /** Steel bar in the nose. [mm] */
  readonly weight: { readonly diameterMm: number; readonly lengthMm: number };
  /** From the axis to the middle of the nose. [mm] */
  readonly noseMm: number;
  /** Of all that turns. [g] */
  readonly massG: number;
  /** About the axis. [kg m²] */
  readonly inertiaKgM2: number;
  readonly response: VaneResponse;
}

/** Sleeve of the fin over the tube: its length as a share of the fin's depth, and its wall. */
export const [SLEEVE_SHARE, SLEEVE_WALL_MM] = [0.8, 1.6];

/** The nose: wall round the steel, floor, and socket for the tube. [mm] */
export const [NOSE_WALL_MM, NOSE_FLOOR_MM, NOSE_SOCKET_MM] = [2.4, 2, 14];

/** From the axis to the middle of the nose. [mm] @source own choice: short, since the nose adds inertia and no hold. */
const NOSE_AT_MM = 70;

/** Finest step in which an arm is lengthened, and its shortest. [mm] */
const [ARM_STEP_MM, SHORTEST_ARM_MM] = [5, 100];

/** Finest step in which a fin is widened. [mm] */
const SPAN_STEP_MM = 5;

/** Width of the sleeve, square. [mm] */
export const SLEEVE_WIDTH_MM = VANE_ARM.diameterMm + 2 * SLEEVE_WALL_MM;

/** Mass of the printed fin with its sleeve. [kg] @source plate and sleeve, less the tube's hole. */
export function finMassKg(spanMm: number, depthMm: number, thicknessMm: number): number {
  const hole = (Math.PI / 4) * VANE_ARM.diameterMm ** 2;
  const sleeve = (SLEEVE_WIDTH_MM ** 2 - hole) * SLEEVE_SHARE * depthMm;
  return (spanMm * depthMm * thicknessMm + sleeve) * 1e-9 * PLASTIC_KG_PER_M3;
}

/** Mass of a nose with a steel bar. [kg] */
function noseMassKg(diameterMm: number, lengthMm: number): { shellKg: number; steelKg: number } {
  const outer = diameterMm + 2 * NOSE_WALL_MM;
  const solidMm = NOSE_FLOOR_MM + NOSE_SOCKET_MM;
  const shell =
    tubeKgPerM(outer, diameterMm, PLASTIC_KG_PER_M3) * lengthMm +
    tubeKgPerM(outer, VANE_ARM.diameterMm, PLASTIC_KG_PER_M3) * solidMm;
  return { shellKg: shell / 1000, steelKg: (tubeKgPerM(diameterMm, 0, STEEL_KG_PER_M3) * lengthMm) / 1000 };
}

/** Steel bar no longer than twice its width over 10 mm, so that the nose stays short; `null` where none is heavy enough. */
function weightFor(massKg: number): { diameterMm: number; lengthMm: number } | null {
  for (const diameterMm of STEEL_BARS_MM) {
    const bare = noseMassKg(diameterMm, 0);
    const perMm = noseMassKg(diameterMm, 1);
    const lengthMm = (massKg - bare.shellKg) / (perMm.steelKg + perMm.shellKg - bare.shellKg);
    if (lengthMm <= 4 * diameterMm) return { diameterMm, lengthMm: Math.max(0, lengthMm) };
  }
  return null;
}

/** Narrowest fin that starts the vane at the end of an arm. [mm], its span */
function startingSpanMm(want: VaneWant, armMm: number): number {
  const areaM2 = finAreaForM2({
    frictionNm: want.frictionNmm / 1000,
    speedMPerS: want.startMPerS,
    offRad: degToRad(want.startWithinDeg),
    armM: armMm / 1000,
    aspectRatio: want.aspectRatio,
  });
  return 1000 * Math.sqrt(areaM2 * want.aspectRatio);
}

/** A vane of one arm and fin; `null` where no steel bar balances it. */
function vaneOf({ aspectRatio, finThicknessMm }: VaneWant, armMm: number, spanMm: number): VanePlan | null {
  const depthMm = spanMm / aspectRatio;
  const finAreaM2 = spanMm * depthMm * 1e-6;
  const finKg = finMassKg(spanMm, depthMm, finThicknessMm);
  const finAtMm = armMm + depthMm / 4; // middle of the fin: a quarter of its depth behind where the wind acts
  const tailMm = armMm + depthMm * (SLEEVE_SHARE - 0.25);
  const tubeMm = tailMm + NOSE_AT_MM;
  const tubeKg = (VANE_ARM.kgPerM * tubeMm) / 1000;
  const tubeAtMm = (tailMm - NOSE_AT_MM) / 2;
  const moment = finKg * finAtMm + tubeKg * tubeAtMm;
  const weight = weightFor(moment / NOSE_AT_MM);
  if (!weight) return null;
  const noseKg = moment / NOSE_AT_MM;
  const inertia =
    finKg * (finAtMm ** 2 + depthMm ** 2 / 12) +
    tubeKg * (tubeAtMm ** 2 + tubeMm ** 2 / 12) +
    noseKg * (NOSE_AT_MM ** 2 + weight.lengthMm ** 2 / 12);
  const inertiaKgM2 = inertia * 1e-6;
  return {
    fin: { spanMm, depthMm, thicknessMm: finThicknessMm },
    armMm,
    tubeMm,
    frontMm: NOSE_AT_MM,
    weight,
    noseMm: NOSE_AT_MM,
    massG: 1000 * (finKg + tubeKg + noseKg),
    inertiaKgM2,
    response: vaneResponse({ finAreaM2, aspectRatio, armM: armMm / 1000, inertiaKgM2 }),
  };
}

/** Friction that the largest fin on the longest arm still overcomes. [N mm] */
function mostFrictionNmm({ bedMm, aspectRatio, longestArmMm, startMPerS, startWithinDeg }: VaneWant): number {
  const finAreaM2 = (bedMm ** 2 / aspectRatio) * 1e-6;
  const vane = { finAreaM2, aspectRatio, armM: longestArmMm / 1000 };
  return Math.floor(1e6 * windMomentNm(vane, startMPerS, degToRad(startWithinDeg))) / 1000;
}

function underdamped(want: VaneWant, best: VanePlan | null): Problem {
  const reached = best ? Math.floor(best.response.damping * 100) / 100 : 0;
  return {
    code: 'make/vane-underdamped',
    what: 'No vane within these lengths is calm enough and still starts in so little wind.',
    where: 'vane.damping',
    got: `a damping ratio of ${showNumber(want.damping, 2)} asked for`,
    allowed: `up to ${showNumber(reached, 2)} with an arm of ${showNumber(want.longestArmMm, 0)} mm and a fin within ${showNumber(want.bedMm, 0)} mm`,
    fix:
      reached > 0
        ? `Set vane.damping to ${showNumber(reached, 2)}, or vane.longestArmMm higher: a longer arm calms a vane, a larger fin hardly does.`
        : `Use bearings that turn with ${showNumber(mostFrictionNmm(want), 3)} N mm or less, and set vane.frictionNmm to what you measure.`,
  };
}

/**
 * The shortest vane that starts in light wind and is calm enough, balanced about its axis.
 *
 * The fin is at least as large as the start asks. Widening it helps only until its own mass outweighs the tube's; from
 * there a longer arm is what calms the vane. The nose takes the steel that balances both.
 *
 * @param want - Start, damping, friction, sizes.
 * @throws `make/vane-underdamped` when no arm within the longest does.
 * @source `vaneResponse`; balance: Σ m x = 0.
 * @check src/core/make/vaneParts/vaneMotion.test.ts, src/core/make/vaneParts/vaneParts.test.ts
 */
export function vanePlan(want: VaneWant): VanePlan {
  let best: VanePlan | null = null;
  for (let arm = SHORTEST_ARM_MM; arm <= want.longestArmMm; arm += ARM_STEP_MM) {
    for (let span = startingSpanMm(want, arm); span <= want.bedMm; span += SPAN_STEP_MM) {
      const plan = vaneOf(want, arm, span);
      if (plan && plan.response.damping >= want.damping) return plan;
      if (plan && (!best || plan.response.damping > best.response.damping)) best = plan;
    }
  }
  throw new VanewrightError(underdamped(want, best));
}
