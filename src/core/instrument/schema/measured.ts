import * as z from 'zod';
import { measure, nullable, type FieldNotes } from './field.ts';

const NOT_MEASURED = 'not measured';

function size(least: number, most: number, notes: FieldNotes) {
  return nullable(measure('mm', least, most, notes), NOT_MEASURED);
}

const contrastSchema = z
  .strictObject({
    open: measure('-', 1e-6, 1e9, { meaning: 'Through window 0, which is open.', example: 100 }),
    oneLayer: measure('-', 0, 1e9, { meaning: "Behind window 1: the disc's own thickness.", example: 2 }),
    twoLayers: measure('-', 0, 1e9, { meaning: 'Behind window 2: twice that.', example: 0 }),
  })
  .meta({ description: 'What your sensor shows through the coupon, on any scale that grows with light.' });

/** What the maker measured on a coupon of the process. */
export const measuredSchema = z
  .strictObject({
    barMm: size(40, 60, { meaning: 'Length of the bar, drawn 50 mm.' }),
    slotMm: size(0.1, 10, { meaning: 'Width of the slot labelled 2.0.' }),
    landMm: size(0.1, 10, { meaning: 'Width of the tongue labelled 2.0.' }),
    narrowestSlotMm: size(0.1, 2, { meaning: 'Label of the narrowest slot that is open from end to end.' }),
    narrowestLandMm: size(0.1, 2, { meaning: 'Label of the narrowest tongue that is whole.' }),
    boreLabelMm: size(0.3, 210, { meaning: 'Label of the tightest hole that your shaft goes into by hand.' }),
    footMm: size(0, 2, { meaning: 'Width of the bar where it lay on the bed, less its width above.' }),
    contrast: contrastSchema
      .nullable()
      .default(null)
      .meta({ description: contrastSchema.meta()!.description, defaultRule: `null, for ${NOT_MEASURED}` }),
  })
  .meta({
    description: 'What you measured on the coupon of this process; every later drawing makes good what it shows.',
  });
