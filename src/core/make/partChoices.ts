import type { HeadSpec } from '../head/index.ts';
import { UNMEASURED, type CouponReadings } from './coupon/couponReadings.ts';
import type { GlandName } from './headParts/housing/fittings.ts';
import type { PartName } from './headParts/partBodies.ts';
import { CUP_DEFAULTS, type CupWant } from './vaneParts/cupPlan.ts';
import { VANE_DEFAULTS, type VaneWant } from './vaneParts/vanePlan.ts';

/** What a maker may choose about the printed parts. */
export interface PartChoices {
  /** Sensor at every channel. */
  readonly sensorPart: PartName;
  /** Light at every channel; not used with pairs, which bring their own. */
  readonly lightPart: PartName | 'laser-tube';
  /** Over the tube, and how much of it is held; used with `laser-tube`. [mm] */
  readonly laserTubeMm: { readonly diameterMm: number; readonly heldMm: number };
  /** Air between the disc and each holder. [mm] */
  readonly airGapMm: number;
  readonly gland: GlandName;
  readonly printer: { readonly bedMm: number; readonly layerMm: number };
  readonly measured: CouponReadings;
  /** `null` for a shaft that no vane turns. */
  readonly vane: VaneWant | null;
  readonly cups: CupWant;
}

/**
 * Parts, printer and gaps until the maker chooses.
 *
 * @param head - Kind of sensor and of light.
 * @source common practice, no source: 200 mm bed, 0.2 mm layers, 1.5 mm of air, a laser module of 6 mm.
 */
export function partDefaults({ detector, light }: HeadSpec): PartChoices {
  return {
    sensorPart: detector.kind === 'photoresistor' ? 'photoresistor-5mm' : 'round-3mm',
    lightPart: light.kind === 'laser' ? 'laser-tube' : 'round-3mm',
    laserTubeMm: { diameterMm: 6, heldMm: 12 },
    airGapMm: 1.5,
    gland: 'M12',
    printer: { bedMm: 200, layerMm: 0.2 },
    measured: UNMEASURED,
    vane: VANE_DEFAULTS,
    cups: CUP_DEFAULTS,
  };
}
