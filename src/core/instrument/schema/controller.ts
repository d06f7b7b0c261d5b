import * as z from 'zod';
import { boards } from '../../boards/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { choice, derived, line, measure, nullable, oneOf, whole } from './field.ts';

const [firstBoard, ...otherBoards] = boards.map((board) => board.name);

/** Standard rates of a serial line. [bit/s] */
const BAUD_RATES = [4800, 9600, 19_200, 38_400, 57_600, 115_200] as const;

const pin = line(8, { meaning: "Name of a pin, as the board's maker prints it.", example: 'A0' });

/** Controller and what it sends. */
export const controllerSchema = z
  .strictObject({
    board: choice([firstBoard!, ...otherBoards], { meaning: 'Which controller board reads the channels.' }).default(
      firstBoard!,
    ),
    channelPins: nullable(
      z.array(pin).min(1).max(32).meta({
        description:
          'Pin of each channel, channel 0 first; Y0 to Y15 for inputs of a multiplexer, R0 to R15 of shift registers.',
        examples: [['A0', 'A1', 'A2', 'A3', 'A4']],
      }),
      'the first free ones in order',
    ),
    baud: oneOf(BAUD_RATES, 'bit/s', { meaning: 'Speed of the serial line.' }).default(57_600),
    format: choice(['text', 'json-lines', 'nmea-mwd', 'nmea-mwv', 'senml'], {
      meaning:
        'What a line looks like (docs/line-format.md). text and json-lines carry the raw counts; the others do not, ' +
        'so that nothing can be mended later. senml only on boards with MicroPython.',
    }).default('text'),
    lineIntervalMs: whole('ms', 20, 3_600_000, { meaning: 'Time between two lines.' }).default(250),
  })
  .meta({ description: 'The controller board and what it sends.' });

/** Cups and their switch. */
export const cupsSchema = z
  .strictObject({
    pulsesPerTurn: whole('-', 1, 360, {
      meaning: 'How often the switch closes in one turn of the cups; turn them by hand and count.',
    }).default(1),
    pin: derived(
      line(8, { meaning: 'Pin of the switch: one with an edge interrupt of its own.', example: 'D2' }),
      defaultRules.cupsPin,
    ),
    quietUs: whole('us', 100, 50_000, {
      meaning: 'A contact counts only after this long without any edge.',
    }).default(1500),
    runPerPulseM: nullable(
      measure('m', 0.001, 100, {
        meaning: 'Wind that passes for one pulse: the slope of wind speed against pulses a second.',
      }),
      'cups not yet calibrated',
    ),
    startSpeedMPerS: measure('m/s', 0, 5, {
      meaning: 'Wind speed that the fitted line has at no pulses; added only while the cups turn.',
    }).default(0),
  })
  .meta({ description: 'Cups that count the wind, and their switch.' });
