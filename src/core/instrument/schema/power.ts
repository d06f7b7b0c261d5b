import * as z from 'zod';
import { choice, measure, nullable } from './field.ts';

const batterySchema = z
  .strictObject({
    capacityMah: measure('mAh', 10, 1_000_000, { meaning: 'Capacity printed on the battery.', example: 7000 }),
    voltageV: measure('V', 1, 48, { meaning: 'Its usual voltage.', example: 12 }),
  })
  .meta({ description: 'Battery that carries the instrument through dark days.' });

/** What the instrument runs on. */
export const powerSchema = z
  .strictObject({
    sleep: choice(['awake', 'idle', 'deep'], {
      meaning:
        'What the controller does between two reads. idle: halted until the next tick, nothing is missed. deep: off ' +
        'between two lines, so that turns, jumps and gusts between them are never known; not with cups.',
    }).default('awake'),
    battery: batterySchema
      .nullable()
      .default(null)
      .meta({ description: batterySchema.meta()!.description, defaultRule: 'null, for an adapter that never stops' }),
    regulator: choice(['linear', 'switching'], {
      meaning: 'What brings the battery down to the board: a linear one turns the rest into heat.',
    }).default('linear'),
    boardMa: nullable(
      measure('mA', 0.001, 2000, { meaning: 'Current of the whole board without lights and sensors, measured.' }),
      'the usual one of the board',
    ),
    sunHoursPerDay: nullable(
      measure('h', 0.1, 12, {
        meaning: 'Sunshine on the panel in the darkest month, as hours of full sun a day.',
      }),
      'no panel',
    ),
    darkDays: measure('-', 0.1, 60, { meaning: 'Days that the battery must last without any sun.' }).default(5),
  })
  .meta({ description: 'What it runs on, and what it does between two reads.' });
