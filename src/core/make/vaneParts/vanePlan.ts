import { VanewrightError, type Problem } from '../../error/index.ts';
import type { VaneSpec } from '../../instrument/index.ts';
import { degToRad, showNumber } from '../../units/index.ts';
import {
  finMasses,
  inertiaOf,
  momentOf,
  noseMasses,
  noseMiddleMm,
  tailEndMm,
  TUBE_FRONT_MM,
  tubeMass,
  weightFor,
  type FinSize,
  type SteelBar,
} from './vaneMasses.ts';
import { finAreaForM2, vaneResponse, windMomentNm, type VaneResponse } from './vaneMotion.ts';

/** What a vane must do, and the bed its fin is printed on. */
export interface VaneWant extends VaneSpec {
  readonly bedMm: number;
  /** Of what else turns with it, such as the coded disc. [kg m²] */
  readonly otherInertiaKgM2: number;
}

/** Where a vane's parts go and what they weigh. Distances are from the axis, tail positive. */
export interface VanePlan {
  readonly fin: FinSize;
  /** From the axis to a quarter of the fin's depth. [mm] */
  readonly armMm: number;
  /** Tube, end to end. [mm] */
  readonly tubeMm: number;
  /** Steel bar in the nose. [mm] */
  readonly weight: SteelBar;
  /** From the axis to the middle of the steel. [mm] */
  readonly noseMm: number;
  /** Of all that turns. [g] */
  readonly massG: number;
  /** About the axis. [kg m²] */
  readonly inertiaKgM2: number;
  readonly response: VaneResponse;
}

/** Finest step in which an arm is lengthened, and its shortest. [mm] */
const [ARM_STEP_MM, SHORTEST_ARM_MM] = [5, 100];

/** Finest step in which a fin is widened. [mm] */
const SPAN_STEP_MM = 5;

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
function vaneOf(
  { aspectRatio, finThicknessMm, otherInertiaKgM2 }: VaneWant,
  armMm: number,
  spanMm: number,
): VanePlan | null {
  const depthMm = spanMm / aspectRatio;
  const fin = { spanMm, depthMm, thicknessMm: finThicknessMm };
  const tail = [...finMasses(fin, armMm), tubeMass(fin, armMm)];
  const weight = weightFor(momentOf(tail));
  if (!weight) return null;
  const all = [...tail, ...noseMasses(weight)];
  const inertiaKgM2 = inertiaOf(all) + otherInertiaKgM2;
  const armM = armMm / 1000;
  return {
    fin,
    armMm,
    tubeMm: tailEndMm(fin, armMm) + TUBE_FRONT_MM,
    weight,
    noseMm: noseMiddleMm(weight),
    massG: 1000 * all.reduce((sum, { kg }) => sum + kg, 0),
    inertiaKgM2,
    response: vaneResponse({ finAreaM2: spanMm * depthMm * 1e-6, aspectRatio, armM, inertiaKgM2 }),
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
    where: 'parts.vane.damping',
    got: `a damping ratio of ${showNumber(want.damping, 2)} asked for`,
    allowed: `up to ${showNumber(reached, 2)} with an arm of ${showNumber(want.longestArmMm, 0)} mm and a fin within ${showNumber(want.bedMm, 0)} mm`,
    fix:
      reached > 0
        ? `Set parts.vane.damping to ${showNumber(reached, 2)}, or parts.vane.longestArmMm higher: a longer arm calms a vane, a larger fin hardly does.`
        : `Use bearings that turn with ${showNumber(mostFrictionNmm(want), 3)} N mm or less, and set parts.vane.frictionNmm to what you measure.`,
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
