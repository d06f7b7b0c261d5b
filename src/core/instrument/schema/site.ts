import * as z from 'zod';
import { heading, line, measure } from './field.ts';

/** Where the instrument stands. */
export const siteSchema = z
  .strictObject({
    place: line(120, { meaning: 'Where it stands, in your own words.' }).default('not stated'),
    mastHeightM: measure('m', 0, 100, { meaning: 'Height of the mast above ground.' }).default(3),
    northOffsetDeg: heading(
      "Heading shown when the index mark stands at the head's reference line, clockwise from true north.",
    ).default(0),
  })
  .meta({ description: 'Where it stands.' });
