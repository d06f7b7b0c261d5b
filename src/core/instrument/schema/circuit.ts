import * as z from 'zod';
import { choice, measure, nullable } from './field.ts';

const ladderSchema = z
  .strictObject({
    kind: choice(['r-2r', 'weighted'], {
      meaning: 'Steps of R and 2R; or one resistor a channel, each half of the one before.',
    }).default('r-2r'),
    smallestOhm: measure('ohm', 1000, 1e6, { meaning: 'R, or the smallest of the weighted resistors.' }).default(10_000),
    tolerancePercent: measure('percent', 0.01, 20, {
      meaning: 'Tolerance of these resistors as sold; none is farther off.',
    }).default(1),
    ppmPerK: measure('ppm/K', 0, 2000, { meaning: 'How far each drifts by itself with temperature.' }).default(100),
  })
  .meta({ description: 'Resistors that bring all channels onto one wire; used with `input: ladder` only.' });

/** How light becomes counts. */
export const circuitSchema = z
  .strictObject({
    input: choice(['direct', 'digital', 'multiplexer', 'shift-register', 'ladder'], {
      meaning:
        "How the controller reads the channels: the board's converter; pins behind a comparator or Schmitt gate each; " +
        'one converter pin behind a 16-way analog multiplexer; comparators behind 8-bit shift registers ' +
        'with parallel inputs; or comparators whose outputs a ladder of resistors brings onto one converter pin.',
    }).default('direct'),
    gate: choice(['comparator', 'schmitt'], {
      meaning:
        'What makes on and off of each sensor where the controller does not measure (digital, shift-register, ladder): ' +
        'a comparator about half the supply, or an inverter with a Schmitt input, whose thresholds vary more.',
    }).default('comparator'),
    ladder: ladderSchema.prefault({}),
    emitters: choice(['steady', 'pulsed'], {
      meaning:
        'Lights always on; or lit by the controller for each read, and what the sensors see without them is taken ' +
        'off, so that daylight does not count. Only sensors that follow within 2 ms.',
    }).default('steady'),
    resistorOhm: nullable(
      measure('ohm', 10, 1e7, { meaning: 'Fixed resistor of every divider.' }),
      'the one recommended for the sensor',
    ),
    resistorTolerancePercent: measure('percent', 0, 20, {
      meaning: 'Tolerance of that resistor as sold.',
    }).default(5),
    sensorTo: choice(['supply', 'ground'], {
      meaning: 'Where the sensor sits: to the supply, light gives high counts; to ground, low counts.',
    }).default('supply'),
    thresholds: choice(['per-channel', 'shared'], {
      meaning: 'One pair of thresholds a channel, measured on the build; or one pair for all, from the drawing.',
    }).default('per-channel'),
    hysteresisCounts: nullable(
      measure('counts', 0, 4000, { meaning: 'Distance of the two thresholds.' }),
      'the recommended one',
    ),
    noiseCounts: measure('counts', 0.1, 100, {
      meaning: 'Scatter of one conversion, as a standard deviation.',
    }).default(1),
  })
  .meta({ description: 'Dividers and converter.' });
