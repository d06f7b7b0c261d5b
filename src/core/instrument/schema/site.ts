import * as z from 'zod';
import { heading, line, measure, nullable } from './field.ts';
import { siteWindSchema } from './siteWind.ts';

/** Settings of north that a site keeps: fifty years of two a year. */
const NORTH_MOST = 100;

const NOT_STATED = 'a place not stated';

const northSchema = z
  .strictObject({
    since: line(30, { meaning: 'From when on it holds, in UTC.', example: '2024-05-17T10:30:00.000Z' }),
    offsetDeg: heading('northOffsetDeg from then on.'),
    sigmaDeg: measure('deg', 0, 180, { meaning: 'Standard error of it.', example: 1.1 }),
    by: line(400, { meaning: 'How it was found.', example: 'church tower' }),
  })
  .meta({ description: 'One setting of north.' });

/** Where the instrument stands. */
export const siteSchema = z
  .strictObject({
    place: line(120, { meaning: 'Where it stands, in your own words.' }).default('not stated'),
    latitudeDeg: nullable(
      measure('deg', -90, 90, { meaning: 'Latitude, north positive; for north by sun, landmark or compass.' }),
      NOT_STATED,
    ),
    longitudeDeg: nullable(measure('deg', -180, 180, { meaning: 'Longitude, east positive.' }), NOT_STATED),
    mastHeightM: measure('m', 0, 100, { meaning: 'Height of the mast above ground.' }).default(3),
    northOffsetDeg: heading(
      "Heading shown when the index mark stands at the head's reference line, clockwise from true north.",
    ).default(0),
    northHistory: z.array(northSchema).max(NORTH_MOST).default([]).meta({
      description: 'Settings of north with their days, youngest last. `vanewright fit north --write` adds them.',
      defaultRule: 'empty',
    }),
    wind: siteWindSchema.prefault({}),
    strayFieldMt: measure('mT', 0, 100, {
      meaning: 'Magnetic field near the shaft from motors, magnets or magnetised iron; that of the earth is 0.05.',
    }).default(0.05),
  })
  .meta({ description: 'Where it stands.' });
