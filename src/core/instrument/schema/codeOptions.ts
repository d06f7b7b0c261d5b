import * as z from 'zod';
import { choice, whole } from './field.ts';

const yesNo = (description: string) => z.boolean().meta({ description });

/** What a maker may ask of a code beyond its count; what a family does not know, it refuses by name. */
export const codeOptionsSchema = z
  .strictObject({
    channels: whole('-', 1, 16, {
      meaning: 'Sensors the code shall use. Left out, the code takes the fewest it can.',
      example: 9,
    }).optional(),
    leastMarkSteps: whole('steps', 1, 16, {
      meaning: 'Shortest mark that is enough: a search ends as soon as it has one. Left out, it looks for the longest.',
      example: 5,
    }).optional(),
    headPlacement: choice(['even', 'half-turn'], {
      meaning: 'Sensors of a single-track code: spread evenly round the turn, or all within half a turn. Left out, the code chooses.',
    }).optional(),
    clockTrack: yesNo('Whether a shift-register disc has a second track that tells when the word may be read.').optional(),
    indexTrack: yesNo('Whether a counting wheel has a second track with one window that sets the count.').optional(),
    seam: choice(['closed', 'open'], {
      meaning: 'Whether one channel changes between the last position and the first too (closed), or several may (open), for shafts that turn less than once. Left out, the code chooses.',
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'What else is asked of that code. Each code knows some of these and refuses the others.' });
