import { balanceOf, densityOf, discLayers, formOf, type DiscPlan } from '../../disc/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { meshVolumeMm3 } from '../solids/meshFacts.ts';
import type { Solid } from '../solids/solid.ts';
import { travelOf } from './penLength.ts';

/** How long a machine works, and what that rests on. */
export interface JobTime {
  readonly job: string;
  readonly minutes: number;
  /** The numbers it was reckoned with. */
  readonly assumption: string;
}

/** Speed of a cut through a sheet 3 mm thick; half as thick goes twice as fast. [mm/s] @source common practice, no source. */
const CUT_MM_PER_S_AT_3_MM = 10;

/** Time to pierce and to move on. [s] @source common practice, no source. */
const PIERCE_S = 1;

/** Engraving: speed of the head and distance of its lines. [mm/s], [mm] @source common practice, no source. */
const ENGRAVE = { mmPerS: 200, lineMm: 0.1 } as const;

/** Printing: melt laid a second, height of a layer, time lost on each, warming up. @source common practice, no source. */
const PRINT = { mm3PerS: 5, layerMm: 0.2, layerS: 3, warmS: 300 } as const;

/** Minutes to print a solid. [min] */
export function printMinutes(solid: Pick<Solid, 'mesh'>): number {
  const volume = meshVolumeMm3(solid.mesh);
  const heights = solid.mesh.positionsMm.filter((_, at) => at % 3 === 2);
  const height = heights.reduce((most, z) => Math.max(most, z), 0);
  return (PRINT.warmS + volume / PRINT.mm3PerS + (height / PRINT.layerMm) * PRINT.layerS) / 60;
}

const printAssumption = `${PRINT.mm3PerS} mm³ of plastic a second, solid; layers of ${showMm(PRINT.layerMm)}, ${PRINT.layerS} s lost on each; ${PRINT.warmS / 60} min to warm up`;

/** Area that a layer encloses, by the mass of the pattern: engraving goes over all of it. [mm²] */
function engravedMm2(plan: DiscPlan): number {
  const form = formOf(plan.spec);
  if (form.kind !== 'relief' || plan.strip) return 0;
  const { thicknessMm } = plan.spec;
  const gPerMm3 = densityOf(plan.spec) * 1e-6;
  const whole = balanceOf({ ...plan, tracks: [], ribs: [] }).massG / (gPerMm3 * thicknessMm);
  const here = balanceOf(plan).massG / gPerMm3;
  // Mass is that of the whole floor and of what stands on it.
  return whole - (here - whole * form.floorMm) / (thicknessMm - form.floorMm);
}

function laserTimes(plan: DiscPlan): JobTime[] {
  const speed = (CUT_MM_PER_S_AT_3_MM * 3) / plan.spec.thicknessMm;
  const jobs = discLayers(plan)
    .filter(({ operation }) => operation === 'cut')
    .map(({ draw }): JobTime => {
      const { lengthMm, outlines } = travelOf(draw);
      return {
        job: 'cut the disc',
        minutes: (lengthMm / speed + outlines * PIERCE_S) / 60,
        assumption: `${showNumber(lengthMm, 0)} mm at ${showNumber(speed, 1)} mm/s through ${showMm(plan.spec.thicknessMm)}; ${outlines} outlines, ${PIERCE_S} s to begin each`,
      };
    });
  const area = engravedMm2(plan);
  if (area === 0) return jobs;
  const engrave: JobTime = {
    job: 'engrave the disc',
    minutes: area / (ENGRAVE.mmPerS * ENGRAVE.lineMm) / 60,
    assumption: `${showNumber(area, 0)} mm² in lines ${showMm(ENGRAVE.lineMm)} apart at ${ENGRAVE.mmPerS} mm/s, one pass`,
  };
  return [engrave, ...jobs];
}

/**
 * How long machines work on a disc and on printed parts.
 *
 * @param plan - A disc plan.
 * @param discSolids - Its solids, where it has some.
 * @param others - Other printed parts.
 * @returns One row a job, each with what it rests on. [min]
 * @check src/core/make/bundle/bundle.test.ts
 */
export function jobTimes(plan: DiscPlan, discSolids: readonly Solid[], others: readonly Solid[]): JobTime[] {
  const { kind } = plan.spec.process;
  const prints = (solids: readonly Solid[], name: (solid: Solid) => string): JobTime[] =>
    solids.map((solid) => ({
      job: `print ${name(solid)}`,
      minutes: printMinutes(solid),
      assumption: printAssumption,
    }));
  const ofDisc: JobTime[] =
    kind === 'fdm'
      ? prints(discSolids, ({ name }) => name)
      : kind === 'laser'
        ? laserTimes(plan)
        : kind === 'pcb'
          ? [
              {
                job: 'have the board made',
                minutes: 0,
                assumption: 'made and posted by a board maker: days, not minutes',
              },
            ]
          : [{ job: 'print the pattern', minutes: 2, assumption: 'one page, and time to measure its bar' }];
  return [...ofDisc, ...prints(others, ({ name }) => name)];
}
