import * as z from 'zod';
import { POSITIONS_RANGE } from '../../codes/index.ts';
import { choice, heading, line, measure, whole } from './field.ts';

/** Most channels that an instrument may have. [-] */
export const CHANNELS_MOST = 32;

/** Largest count of any converter that a board may have: 16 bits. [counts] */
const COUNTS_MOST = 65_535;

/** Most points of an edge curve that a small controller should hold. [-] */
const CURVE_POINTS_MOST = 33;

const counts = (meaning: string): z.ZodNumber => measure('counts', 0, COUNTS_MOST, { meaning });
const wholeCounts = (meaning: string): z.ZodInt => whole('counts', 0, COUNTS_MOST, { meaning });

const channelSchema = z
  .strictObject({
    pin: line(8, { meaning: 'Pin, or input of a multiplexer or shift register, that the channel is on.', example: 'A0' }),
    litCounts: counts('Middle of its counts in front of an open window.'),
    darkCounts: counts('Middle of its counts behind solid land.'),
    lowCounts: wholeCounts('It turns low at or below this.'),
    highCounts: wholeCounts('It turns high at or above this.'),
    litIsHigh: z.boolean().meta({ description: 'Whether it reads more counts in light than in the dark.' }),
    edgeCurve: z
      .array(measure('-', 0, 1, { meaning: 'Place across the edge.' }))
      .min(2)
      .max(CURVE_POINTS_MOST)
      .nullable()
      .default(null)
      .meta({
        description: 'Place across a soft edge, 0 dark and 1 lit, at equally spaced counts from dark to lit.',
        defaultRule: 'null, and nothing is interpolated inside a step',
      }),
    edgeWidthDeg: measure('deg', 0.001, 180, { meaning: 'Turn from dark to lit across one edge.' })
      .nullable()
      .default(null)
      .meta({
        description: 'Turn from dark to lit across one edge.',
        unit: 'deg',
        defaultRule: 'null, when edgeCurve is',
      }),
  })
  .meta({ description: 'One channel as it was found.' });

const positionSchema = z
  .strictObject({
    word: line(CHANNELS_MOST, { meaning: 'Levels of the channels, channel 0 first.', example: '01100' }),
    centreDeg: heading('Disc angle of the middle of the piece of the turn that shows the word.'),
    halfWidthDeg: measure('deg', 0, 180, { meaning: 'From that middle to either end.' }),
  })
  .meta({ description: 'Where one word really stands.' });

/** What `fit` has found on the finished build. */
export const asBuiltSchema = z
  .strictObject({
    recordedAt: line(30, {
      meaning: 'When the turn was recorded, in UTC.',
      example: '2024-05-17T10:30:00Z',
    }),
    tableHash: line(64, { meaning: 'Short name of this table, as on the certificate.', example: '1c291ca3' }),
    channels: z.array(channelSchema).min(1).max(CHANNELS_MOST).meta({
      description: 'Every channel as it was found, in the order of the code.',
    }),
    sense: choice(['same', 'reversed'], {
      meaning: 'Whether headings follow from disc angles as head.patternedFace says, or run the other way round.',
    }),
    positions: z.array(positionSchema).min(2).max(POSITIONS_RANGE.most).meta({
      description: 'Where each word really stands; words never seen are left out.',
    }),
  })
  .meta({
    description: 'The build as a recorded turn has shown it. `vanewright fit --write` writes it; do not write it by hand.',
  });
