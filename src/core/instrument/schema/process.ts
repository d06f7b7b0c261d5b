import * as z from 'zod';
import { processDefaults, type Process } from '../../disc/index.ts';
import { measure } from './field.ts';
import { measuredSchema } from './measured.ts';

/** Fields that every process has, with the defaults of one. */
function tolerances(standard: Process) {
  return {
    minWindowMm: measure('mm', 0.01, 20, {
      meaning: 'Narrowest opening that comes out open.',
    }).default(standard.minWindowMm),
    minLandMm: measure('mm', 0.01, 20, {
      meaning: 'Narrowest piece of material between two openings along a track.',
    }).default(standard.minLandMm),
    minWebMm: measure('mm', 0, 20, {
      meaning: 'Narrowest ring of material between two tracks.',
    }).default(standard.minWebMm),
    edgeSdMm: measure('mm', 0, 2, {
      meaning: 'How far an edge lies from where it is drawn, as a standard deviation.',
    }).default(standard.edgeSdMm),
    windowGrowthMm: measure('mm', -2, 2, {
      meaning: "How much wider every window comes out than drawn: a laser's kerf, or below 0 for a print.",
    }).default(standard.windowGrowthMm),
    boreSdMm: measure('mm', 0, 5, {
      meaning: 'How far the bore lies off the middle of the pattern, as a standard deviation in each of two directions.',
    }).default(standard.boreSdMm),
    measured: measuredSchema.prefault({}),
  };
}

/** How the disc is made; defaults by kind, each replaced by what the maker measured. */
export const processSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('fdm').meta({ description: 'Printed in layers of melted plastic.' }),
      ...tolerances(processDefaults.fdm),
    }),
    z.strictObject({
      kind: z.literal('laser').meta({ description: 'Cut from sheet with a laser.' }),
      ...tolerances(processDefaults.laser),
    }),
    z.strictObject({
      kind: z.literal('film').meta({ description: 'Printed black on clear film.' }),
      ...tolerances(processDefaults.film),
    }),
  ])
  .meta({ description: 'How the disc is made, and how true that comes out. Measure a coupon and write your own numbers.' });
