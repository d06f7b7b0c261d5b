import { VanewrightError } from '../../error/index.ts';
import type { PartsSpec } from '../../instrument/index.ts';
import { pocketFootprint } from './crowding.ts';
import { acrossMm } from './footprint.ts';
import {
  laserTube,
  partBodies,
  type FacingBody,
  type Footprint,
  type PartName,
  type ReflectanceBody,
  type SlotBody,
} from '../../head/index.ts';
import { slotFootprint } from './slotBracket.ts';

/** The parts of a head. */
export interface ChosenBodies {
  readonly sensor: FacingBody | ReflectanceBody | SlotBody;
  /** `null` where the sensor brings its own light. */
  readonly light: FacingBody | null;
}

function unfit(field: string, got: string, allowed: readonly string[]): VanewrightError {
  return new VanewrightError({
    code: 'make/part-unfit',
    what: 'This part cannot do that job.',
    where: field,
    got,
    allowed: allowed.join(', '),
    fix: `Set ${field} to ${allowed[0]}.`,
  });
}

function namesThat(does: (body: FacingBody) => boolean): PartName[] {
  return (Object.keys(partBodies) as PartName[]).filter((name) => {
    const body: FacingBody | ReflectanceBody | SlotBody = partBodies[name];
    return body.kind === 'facing' && does(body);
  });
}

function lightOf({ lightPart, laserTube: tube }: PartsSpec): FacingBody {
  if (lightPart === 'laser-tube') return laserTube(tube.diameterMm, tube.heldMm);
  const body: FacingBody | ReflectanceBody | SlotBody = partBodies[lightPart];
  if (body.kind !== 'facing' || !body.lights)
    throw unfit('parts.lightPart', lightPart, [...namesThat(({ lights }) => lights), 'laser-tube']);
  return body;
}

/**
 * The parts of a head by their names.
 *
 * @throws `make/part-unfit` where a sensor is to shine, or a light to sense.
 */
export function chosenBodies(choices: PartsSpec): ChosenBodies {
  const sensor: FacingBody | ReflectanceBody | SlotBody = partBodies[choices.sensorPart];
  if (sensor.kind !== 'facing') return { sensor, light: null };
  if (!sensor.senses)
    throw unfit(
      'parts.sensorPart',
      choices.sensorPart,
      namesThat(({ senses }) => senses),
    );
  return { sensor, light: lightOf(choices) };
}

/** Widest outline that any part of the head needs at a channel. [mm] */
export function widestFootprint({ sensor, light }: ChosenBodies): Footprint {
  if (sensor.kind === 'slot') return slotFootprint(sensor);
  const footprints = [pocketFootprint(sensor), ...(light ? [pocketFootprint(light)] : [])];
  return footprints.reduce((widest, next) => (acrossMm(next) > acrossMm(widest) ? next : widest));
}
