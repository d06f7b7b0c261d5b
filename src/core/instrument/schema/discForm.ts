import * as z from 'zod';
import { choice, measure } from './field.ts';

const brightness = ['dark', 'light'] as const;

const colour = z
  .string()
  .regex(/^#[0-9a-fA-F]{6}$/)
  .meta({ description: 'A colour, as # and six hexadecimal digits.', examples: ['#1f5fbf'] });

const colours = z
  .array(colour)
  .min(2)
  .max(3)
  .meta({ description: 'Colour of each level, level 0 first.', examples: [['#f4f4f4', '#101010', '#1f5fbf']] });

/** What the disc is made as; a discriminated group like the process. */
export const formSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('through-cut').meta({ description: 'Windows are holes.' }),
    }),
    z.strictObject({
      kind: z.literal('relief').meta({ description: 'Marks stand above a floor, for reflected light.' }),
      floorMm: measure('mm', 0.1, 20, { meaning: 'Thickness of the floor.', example: 1 }),
      raised: choice(brightness, { meaning: 'Whether what stands up gives no light back (dark) or does (light).' }).default(
        'dark',
      ),
    }),
    z.strictObject({
      kind: z.literal('overlay').meta({ description: 'A pattern printed on film or paper.' }),
      colours: colours.optional().meta({ ...colours.meta(), defaultRule: 'black on clear' }),
    }),
    z.strictObject({
      kind: z.literal('inlay').meta({ description: 'Each level is a material of its own, let into the face.' }),
      depthMm: measure('mm', 0.1, 20, { meaning: 'Depth of the inlay.' }).default(0.6),
      colours,
    }),
    z.strictObject({
      kind: z.literal('copper').meta({ description: 'Etched copper on a board.' }),
      copper: choice(brightness, {
        meaning: 'Whether copper counts as land (dark, light shines through the board) or as window (light comes back from it).',
      }).default('dark'),
    }),
  ])
  .meta({ description: 'What the disc is made as.' });

/** What joins the disc to its shaft besides its bore. */
export const hubSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('plain').meta({ description: 'The bore alone.' }) }),
    z.strictObject({
      kind: z.literal('clamp').meta({ description: 'A printed split ring that a screw closes on the shaft.' }),
      heightMm: measure('mm', 5, 40, { meaning: 'Height of the ring.' }).default(10),
      screwMm: measure('mm', 1.6, 6, { meaning: 'Thread of the screw that closes it.' }).default(3),
    }),
    z.strictObject({
      kind: z.literal('bearing-seat').meta({ description: 'A printed seat for a bearing on which the disc turns.' }),
      bearingDiameterMm: measure('mm', 4, 60, { meaning: 'Outer diameter of the bearing.', example: 16 }),
      bearingWidthMm: measure('mm', 1, 20, { meaning: 'Width of the bearing.', example: 5 }),
      clearanceMm: measure('mm', -0.2, 0.5, {
        meaning: 'Added to the diameter of the bearing; below 0 for a press fit.',
      }).default(0.1),
    }),
  ])
  .meta({ description: 'What joins the disc to its shaft besides its bore: a printed part glued to its plain face.' });

/** The code unrolled along a line. */
export const stripSchema = z
  .strictObject({
    turnLengthMm: measure('mm', 20, 5000, {
      meaning: 'Travel that runs once through all positions.',
      example: 400,
    }),
    leadMm: measure('mm', 0, 500, { meaning: 'Pattern that goes on beyond either end of that travel.' }).default(10),
  })
  .meta({ description: 'The same code along a strip, for gates and floats; the tracks are as wide as on the disc of the same sizes.' });
