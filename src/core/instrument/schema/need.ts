import * as z from 'zod';
import { POSITIONS_RANGE } from '../../codes/index.ts';
import { LEAST_TURN_RATE_DEG_PER_S } from '../../head/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { derived, measure, whole } from './field.ts';

const { least, most } = POSITIONS_RANGE;

/** What the instrument must do. */
export const needSchema = z
  .strictObject({
    positions: derived(
      whole('-', least, most, { meaning: 'Equal steps of a turn the disc tells apart.', example: 32 }),
      defaultRules.positions,
    ),
    resolutionDeg: derived(
      measure('deg', 360 / most, 360 / least, {
        meaning: 'Largest step between two readings; may be given instead of positions.',
        example: 11.25,
      }),
      defaultRules.oneStep,
    ),
    accuracyDeg: derived(
      measure('deg', 0.05, 180, {
        meaning: 'Largest error accepted at any place of the turn, the half step of the disc itself included.',
      }),
      defaultRules.oneStep,
    ),
    turnRateDegPerS: measure('deg/s', LEAST_TURN_RATE_DEG_PER_S, 3600, {
      meaning: 'Fastest turn at which every position must still be read; photoresistors follow slow turns only.',
    }).default(45),
    turnRangeDeg: measure('deg', 1, 360, {
      meaning: 'How far the shaft can turn: 360 for a vane or a dome, less for a gate or a valve.',
    }).default(360),
    mustSurvivePowerLoss: z
      .boolean()
      .default(true)
      .meta({ description: 'Whether the direction must be known as soon as the power returns, before anything turns.' }),
    wantedYield: measure('-', 0.01, 0.999, {
      meaning: 'Share of virtual builds that must meet the need: 0.95 is 95 builds in 100.',
    }).default(0.95),
  })
  .meta({
    description: 'What the instrument must do.',
    anyOf: [{ required: ['positions'] }, { required: ['resolutionDeg'] }],
  });
