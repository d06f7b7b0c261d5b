import * as z from 'zod';
import { familyNames, OWN_WORDS } from '../../codes/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { codeOptionsSchema } from './codeOptions.ts';
import { formSchema, hubSchema, stripSchema } from './discForm.ts';
import { choice, derived, line, measure, nullable, oneOf } from './field.ts';
import { processSchema } from './process.ts';

const boreDiameterMm = measure('mm', 0.5, 200, { meaning: 'Diameter of the hole, as it shall come out.', example: 5 });

const boreSchema = z
  .discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('round').meta({ description: 'A round hole.' }), diameterMm: boreDiameterMm }),
    z.strictObject({
      shape: z.literal('d').meta({ description: 'A round hole with one flat side.' }),
      diameterMm: boreDiameterMm,
      acrossFlatMm: measure('mm', 0.3, 200, {
        meaning: 'From the flat to the far side of the hole; more than half the diameter and less than all of it.',
        example: 4.5,
      }),
    }),
    z.strictObject({
      shape: z.literal('hex').meta({ description: 'A hexagon; its diameter is measured across the flats.' }),
      diameterMm: boreDiameterMm,
    }),
  ])
  .meta({ description: 'Hole on the shaft.' });

const notchSchema = z
  .strictObject({
    widthMm: derived(
      measure('mm', 0, 20, { meaning: 'Width of the notch along the rim; 0 for none.' }),
      defaultRules.notchWidth,
    ),
    depthMm: derived(
      measure('mm', 0, 20, { meaning: 'Depth of the notch from the edge of the disc; 0 for none.' }),
      defaultRules.notchDepth,
    ),
  })
  .meta({ description: 'Index notch in the rim at disc angle 0, to clock the disc on its shaft.' });

/** The disc as the maker asks for it. */
export const discSchema = z
  .strictObject({
    code: choice([OWN_WORDS, ...familyNames], {
      meaning: 'Which pattern the disc carries; own-words takes those of codeFile.',
    }).default('reflected-gray'),
    codeFile: nullable(line(200, { meaning: 'CSV or JSON file of your own words, its path from this file; only with code: own-words.' }), 'no file'),
    codeOptions: codeOptionsSchema,
    diameterMm: measure('mm', 16, 600, { meaning: 'Diameter over the rim.', example: 84 }),
    bore: boreSchema.default({ shape: 'round', diameterMm: 5 }),
    hubDiameterMm: derived(
      measure('mm', 1, 590, { meaning: 'Solid round the bore; the innermost track begins here.' }),
      defaultRules.hub,
    ),
    hub: hubSchema.prefault({ kind: 'plain' }),
    thicknessMm: derived(
      measure('mm', 0.05, 20, { meaning: 'Thickness of the disc.' }),
      defaultRules.thickness,
    ),
    webMm: derived(
      measure('mm', 0, 50, { meaning: 'Ring of material between two tracks; 0 for none.' }),
      defaultRules.web,
    ),
    rimMm: derived(
      measure('mm', 0, 100, { meaning: 'Ring of material outside the outermost track; 0 for none.' }),
      defaultRules.rim,
    ),
    finest: choice(['outside', 'inside'], { meaning: 'Where the track with the shortest marks lies.' }).default('outside'),
    windowLevel: oneOf([0, 1], '-', { meaning: 'The level of the code that lets light through.' }).default(1),
    notch: notchSchema.prefault({}),
    process: processSchema,
    form: derived(formSchema, defaultRules.form),
    strip: stripSchema
      .nullable()
      .default(null)
      .meta({ description: stripSchema.meta()!.description, defaultRule: 'null, for a disc' }),
    allowance: derived(
      choice(['none', 'drawn'], {
        meaning: 'Whether drawings are moved by what the tool takes (drawn), or your machine does that (none).',
      }),
      defaultRules.allowance,
    ),
    densityKgPerM3: derived(
      measure('kg/m3', 100, 20_000, { meaning: "Density of the disc's material." }),
      defaultRules.density,
    ),
  })
  .meta({ description: 'The coded disc.' });
