import * as z from 'zod';
import { choice, measure, nullable } from './field.ts';

/** What can turn the shaft. */
export const movers = ['wind', 'motor', 'hand'] as const;

/** Tools that a way of sensing may ask for. */
export const toolNames = [
  'fdm-printer',
  'laser-cutter',
  'paper-printer',
  'colour-printer',
  'soldering-iron',
  'multimeter',
  'drill',
  'lathe',
] as const;

/**
 * What `vanewright weigh` asks besides `need`.
 *
 * Defaults: a friction as in `parts.vane.frictionNmm`, a power cut a month, five years. Common practice, no source.
 */
export const sensingSchema = z
  .strictObject({
    turnedBy: choice(movers, {
      meaning: 'What turns the shaft. A motor can look for an index by itself; wind and hands cannot.',
    }).default('wind'),
    shaftEnd: choice(['free', 'closed'], {
      meaning: 'Whether an end of the shaft is free for a sensor on its axis; a dome or a thick stem has none.',
    }).default('free'),
    startTorqueNmm: measure('N mm', 0.001, 1_000_000, {
      meaning: 'Turning moment that the sensor may take for itself before the shaft begins to turn.',
    }).default(0.1),
    lifeYears: measure('-', 0.1, 50, { meaning: 'Years it must last without being replaced.' }).default(5),
    budgetEur: measure('EUR', 1, 100_000, {
      meaning: 'What the sensing may cost in parts, controller and housing not counted.',
    }).default(60),
    tools: z
      .array(choice(toolNames, { meaning: 'A tool at hand.' }))
      .max(toolNames.length)
      .default(['fdm-printer', 'soldering-iron', 'multimeter'])
      .meta({ description: 'Tools you have, or can borrow.', examples: ['[fdm-printer, soldering-iron]'] }),
    powerCutsPerYear: measure('-', 0, 10_000, {
      meaning: 'How often a year the power fails, an empty battery and a restart for repair included.',
    }).default(12),
    turnsPerDay: nullable(
      measure('-', 0, 1_000_000, { meaning: 'How far the shaft turns in a day, to and fro added up, in turns.' }),
      'what the wind of the site makes of it, or 4 for a motor or a hand',
    ),
    mustShowFaults: z
      .boolean()
      .default(false)
      .meta({ description: 'Whether a dead lamp or a broken wire must show itself and never pass for a direction.' }),
  })
  .meta({ description: 'What is asked of the way of sensing, whichever it is; `vanewright weigh` compares ten of them.' });
