import * as z from 'zod';
import { glands, partBodyNames, type GlandName, type PartName } from '../../head/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { choice, derived, measure, oneOf } from './field.ts';

const bodies = partBodyNames as readonly [PartName, ...PartName[]];
const glandNames = Object.keys(glands) as [GlandName, ...GlandName[]];

/**
 * What is asked of a vane.
 *
 * Defaults: starting threshold 0.5 m/s to within 5 degrees, EPA-454/R-99-005; damping 0.3 meets the need of WMO-No. 8,
 * Wieringa, J. Appl. Meteor. 6, 1114 (1967). Friction and sizes: common practice, no source.
 */
const vaneSchema = z
  .strictObject({
    damping: measure('-', 0.05, 0.9, { meaning: 'Damping ratio, at least; 0.3 overshoots by a third, 0.4 by a quarter.' }).default(0.3),
    startMPerS: measure('m/s', 0.1, 5, { meaning: 'Wind in which it must still turn.' }).default(0.5),
    startWithinDeg: measure('deg', 1, 15, { meaning: 'How far off the wind it may stay in that wind.' }).default(5),
    frictionNmm: measure('N mm', 0.001, 50, {
      meaning: 'Moment that just begins to turn the shaft: a small weight on a thread, times its distance from the axis.',
    }).default(0.1),
    finThicknessMm: measure('mm', 0.2, 5, { meaning: 'Thickness of the fin; thin is light, and light is calm.' }).default(0.6),
    aspectRatio: measure('-', 0.5, 6, { meaning: 'Height of the fin over its depth.' }).default(2),
    longestArmMm: measure('mm', 100, 2000, { meaning: 'From the axis to the fin, at most.' }).default(600),
  })
  .meta({ description: 'Fin, arm and nose of a wind vane on the shaft.' });

const cupShapeSchema = z
  .strictObject({
    cups: oneOf([3, 4], '-', { meaning: 'How many cups.' }).default(3),
    mouthMm: measure('mm', 20, 150, { meaning: 'Across the mouth of a cup, inside.' }).default(50),
    radiusMm: measure('mm', 30, 300, { meaning: 'From the axis to the middle of a cup.' }).default(70),
    wallMm: measure('mm', 0.8, 4, { meaning: 'Wall of a cup.' }).default(1.2),
  })
  .meta({ description: 'Shape of the cups; made where `cups` is not null.' });

const laserTubeSchema = z
  .strictObject({
    diameterMm: measure('mm', 3, 30, { meaning: 'Diameter over the tube.' }).default(6),
    heldMm: measure('mm', 3, 60, { meaning: 'How much of its length is held.' }).default(12),
  })
  .meta({ description: 'Laser module; used with lightPart: laser-tube.' });

/** What is printed round the disc, and from which parts. */
export const partsSchema = z
  .strictObject({
    sensorPart: derived(choice(bodies, { meaning: 'Sensor at every channel.' }), defaultRules.sensorPart),
    lightPart: derived(
      choice([...bodies, 'laser-tube'], { meaning: 'Light at every channel; not used with pairs, which bring their own.' }),
      defaultRules.lightPart,
    ),
    laserTube: laserTubeSchema.prefault({}),
    airGapMm: measure('mm', 0.3, 20, { meaning: 'Air between the disc and each holder.' }).default(1.5),
    gland: choice(glandNames, { meaning: 'Thread of the cable gland.' }).default('M12'),
    bedMm: measure('mm', 50, 2000, { meaning: "Side of the printer's square bed." }).default(200),
    layerMm: measure('mm', 0.04, 1, { meaning: 'Height of one printed layer.' }).default(0.2),
    vane: vaneSchema.nullable().prefault({}).meta({
      description: `${vaneSchema.meta()!.description} null for a shaft that no vane turns.`,
    }),
    cups: cupShapeSchema.prefault({}),
  })
  .meta({ description: 'What is printed round the disc, and from which parts.' });
