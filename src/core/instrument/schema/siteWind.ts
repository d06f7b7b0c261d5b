import * as z from 'zod';
import { measure, nullable } from './field.ts';

/** Sectors a rose may be stated in. */
const SECTORS = { least: 4, most: 36 } as const;

/**
 * The wind of a site, as far as waiting for an index or meeting a gap depends on it.
 *
 * Defaults are those of no place: all directions alike, weather that turns every other day, an hourly direction that
 * wanders by 25 degrees and swings by 15 degrees about it. Values from memory; a month of any station tells better.
 */
export const siteWindSchema = z
  .strictObject({
    sectorShares: nullable(
      z
        .array(measure('-', 0, 1_000_000, { meaning: 'Share of a sector, in any one unit.' }))
        .min(SECTORS.least)
        .max(SECTORS.most)
        .meta({
          description: 'How often the wind comes from each sector, the first centred on north, then clockwise.',
          examples: ['[8, 6, 5, 7, 12, 24, 25, 13]'],
        }),
      'all directions alike',
    ),
    weatherHours: measure('h', 0.5, 10_000, {
      meaning: 'Mean time from one change of weather to the next; each brings a direction of its own.',
    }).default(48),
    hourChangeDeg: measure('deg', 0, 180, {
      meaning: 'Standard deviation of what the direction wanders from one hour to the next between changes of weather.',
    }).default(25),
    swingDeg: measure('deg', 0, 90, {
      meaning: 'Standard deviation of the direction within ten minutes.',
    }).default(15),
    calmShare: measure('-', 0, 0.99, {
      meaning: 'Share of the time in which the air is too still to turn the vane.',
    }).default(0.1),
  })
  .meta({ description: 'Wind of the site, for `vanewright weigh`.' });
