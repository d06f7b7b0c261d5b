import * as z from 'zod';
import { processDefaults, type Process } from '../../disc/index.ts';
import { measure, whole } from './field.ts';
import { measuredSchema } from './measured.ts';

/** More than any disc needs: nothing is refused until the maker says how many there are. */
const MOST_COLOURS = 16;

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
    colourCount: whole('-', 1, 16, {
      meaning: 'Materials or inks that it can lay in one part.',
    }).default(MOST_COLOURS),
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
    z.strictObject({
      kind: z.literal('colour-print').meta({ description: 'Printed in colours on paper, card or film.' }),
      ...tolerances(processDefaults['colour-print']),
    }),
    z.strictObject({
      kind: z.literal('pcb').meta({ description: 'Etched and milled as a circuit board.' }),
      ...tolerances(processDefaults.pcb),
    }),
  ])
  .meta({ description: 'How the disc is made, and how true that comes out. Measure a coupon and write your own numbers.' });
