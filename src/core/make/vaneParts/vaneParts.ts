import type { Bore } from '../../disc/index.ts';
import { VanewrightError, type Problem } from '../../error/index.ts';
import type { CupShapeSpec } from '../../instrument/index.ts';
import { showNumber } from '../../units/index.ts';
import { madePart, type MadePart } from '../solids/madePart.ts';
import type { PrintSetting } from '../solids/print.ts';
import type { ShapeKit } from '../solids/shapeKit.ts';
import { cupPlan, cupProblems, STORM_M_PER_S } from './cupPlan.ts';
import { cupHubShape, cupShape } from './cupShapes.ts';
import { CUP_ARM, VANE_ARM } from './materials.ts';
import { vanePlan, type VaneWant } from './vanePlan.ts';
import { finShape, noseShape, vaneHubShape } from './vaneShapes.ts';

/** Parts of a vane or of cups. */
export interface TurningParts {
  readonly parts: readonly MadePart[];
  readonly problems: readonly Problem[];
}

/** What a vane or cups sit on, and the printer. */
export interface TurningBuild {
  readonly bore: Bore;
  readonly print: PrintSetting;
}

/**
 * Fin, nose and hub of a vane that starts, calms and balances as wanted.
 *
 * @param want - What the vane must do.
 * @returns The parts, or none and `make/vane-underdamped`.
 */
export function vaneParts(kit: ShapeKit, want: VaneWant, { bore, print }: TurningBuild): TurningParts {
  try {
    const plan = vanePlan(want);
    const { fin, weight, response } = plan;
    const round = (value: number): number => Math.round(value * 10) / 10;
    const motion =
      `Damping ratio ${showNumber(response.damping, 2)}, overshoot ${showNumber(100 * response.overshoot, 0)} %, ` +
      `natural wavelength ${showNumber(response.naturalWavelengthM, 1)} m; turns in ${want.startMPerS} m/s.`;
    return {
      problems: [],
      parts: [
        madePart(finShape(kit, plan, print), print, {
          name: 'vane-fin',
          sizes: [
            { name: 'span', mm: round(fin.spanMm) },
            { name: 'depth', mm: round(fin.depthMm) },
            { name: 'from the axis to a quarter of the depth', mm: plan.armMm },
            { name: `${VANE_ARM.title}, cut to`, mm: round(plan.tubeMm) },
          ],
          notes: [motion, 'Glue the tube flush with the end of the sleeve; the fin stands upright in use.'],
        }),
        madePart(noseShape(kit, plan, print), print, {
          name: 'vane-nose',
          sizes: [
            { name: `steel bar of ${weight.diameterMm} mm, cut to`, mm: round(weight.lengthMm) },
            { name: 'from the axis to the middle of the steel', mm: round(plan.noseMm) },
          ],
          notes: [
            'Slide it along the tube until the vane stays where it is put, lying on its side; then glue it.',
          ],
        }),
        madePart(vaneHubShape(kit, bore, print), print, {
          name: 'vane-hub',
          sizes: [{ name: 'shaft', mm: bore.diameterMm }],
          notes: [
            'M3 set screws: one on the tube from above, one on the shaft.',
            `All that turns weighs ${showNumber(plan.massG, 0)} g.`,
          ],
        }),
      ],
    };
  } catch (error) {
    if (error instanceof VanewrightError) return { parts: [], problems: error.problems };
    throw error;
  }
}

/** Cup and hub; the cup is printed once for each arm. @param want - Sizes. */
export function cupParts(kit: ShapeKit, want: CupShapeSpec, { bore, print }: TurningBuild): TurningParts {
  const plan = cupPlan(want, bore);
  const problems = cupProblems(plan);
  if (problems.length > 0) return { parts: [], problems };
  return {
    problems: [],
    parts: [
      madePart(cupShape(kit, plan, print), print, {
        name: 'cup',
        sizes: [
          { name: 'mouth inside', mm: plan.mouthMm },
          { name: 'axis to the middle of the cup', mm: plan.radiusMm },
          { name: `${CUP_ARM.title}, cut to`, mm: Math.round(plan.rodMm * 10) / 10 },
        ],
        notes: [
          `Print ${plan.cups}, all alike; weigh them, they must agree within 0.1 g.`,
          `About ${showNumber(plan.turnsPerM, 2)} turns a metre of wind: calibrate for the true number.`,
          `At ${STORM_M_PER_S} m/s each pulls with ${showNumber(plan.pullN, 0)} N: glue the rods, do not clamp them.`,
        ],
      }),
      madePart(cupHubShape(kit, plan, bore, print), print, {
        name: 'cup-hub',
        sizes: [{ name: 'shaft', mm: bore.diameterMm }],
        notes: [`Takes ${plan.cups} rods, all cups facing the same way round; one M3 set screw.`],
      }),
    ],
  };
}
