import { overshootFromDamping, wavelengthOverDelay } from '../../wind/index.ts';

/** Density of air for which a vane is sized: 15 degrees at sea level. [kg/m³] @source ISO 2533, standard atmosphere. */
export const AIR_KG_PER_M3 = 1.225;

/** What turns, and what the wind gets hold of. */
export interface VaneBody {
  /** Area of the fin. [m²], above 0 */
  readonly finAreaM2: number;
  /** Span of the fin, squared, over its area. [-], above 0 */
  readonly aspectRatio: number;
  /** From the axis to where the wind acts on the fin, a quarter of its depth behind its front. [m], above 0 */
  readonly armM: number;
  /** Of all that turns, about the axis. [kg m²], above 0 */
  readonly inertiaKgM2: number;
}

/** How a vane follows the wind; the same at every speed. */
export interface VaneResponse {
  /** ζ. [-] */
  readonly damping: number;
  /** Length of wind that passes in one swing without damping. [m] */
  readonly naturalWavelengthM: number;
  /** Wind that passes until half of a deflection is made good; `null` for a vane that does not swing. [m] */
  readonly delayDistanceM: number | null;
  /** Each swing over the one before; 0 for a vane that does not swing. [-] */
  readonly overshoot: number;
}

/**
 * Lift of a flat fin for each radian off the wind, in small angles. [1/rad]
 *
 * @param aspectRatio - Span squared over area. [-], above 0
 * @source Helmbold's equation for wings of low aspect ratio (1942): a = 2π A / (2 + √(4 + A²)); value from memory.
 * @check src/core/make/vaneParts/vaneMotion.test.ts (both ends: 2π for a long wing, πA/2 for a short one)
 */
export function liftSlope(aspectRatio: number): number {
  return (2 * Math.PI * aspectRatio) / (2 + Math.sqrt(4 + aspectRatio ** 2));
}

/**
 * How a vane follows the wind.
 *
 * Off the wind by θ the fin feels ½ρU²·A·a·(θ + armθ'/U); so I θ'' + ½ρU A a r² θ' + ½ρU² A a r θ = 0, hence
 * λn = 2π √(2I / (ρ A a r)) and ζ = π r / λn, both free of the wind's speed.
 *
 * @source Wieringa, J. Appl. Meteor. 6, 1114 (1967); MacCready & Jex, J. Appl. Meteor. 3, 182 (1964): values from memory.
 * @check src/core/make/vaneParts/vaneMotion.test.ts (the equation integrated step by step; wind tables of ζ and overshoot)
 */
export function vaneResponse({ finAreaM2, aspectRatio, armM, inertiaKgM2 }: VaneBody): VaneResponse {
  const hold = AIR_KG_PER_M3 * finAreaM2 * liftSlope(aspectRatio) * armM;
  const naturalWavelengthM = 2 * Math.PI * Math.sqrt((2 * inertiaKgM2) / hold);
  const damping = (Math.PI * armM) / naturalWavelengthM;
  const swings = damping < 1;
  return {
    damping,
    naturalWavelengthM,
    delayDistanceM: swings ? naturalWavelengthM / wavelengthOverDelay(damping) : null,
    overshoot: swings ? overshootFromDamping(damping) : 0,
  };
}

/**
 * Turning moment of the wind on a vane that stands off it. [N m]
 *
 * @param vane - Fin and arm.
 * @param speedMPerS - Wind. [m/s]
 * @param offRad - Angle off the wind, small. [rad]
 * @source ½ ρ U² A a α r, as in `vaneResponse`.
 * @check src/core/make/vaneParts/vaneMotion.test.ts
 */
export function windMomentNm(
  { finAreaM2, aspectRatio, armM }: Omit<VaneBody, 'inertiaKgM2'>,
  speedMPerS: number,
  offRad: number,
): number {
  return 0.5 * AIR_KG_PER_M3 * speedMPerS ** 2 * finAreaM2 * liftSlope(aspectRatio) * offRad * armM;
}

/**
 * Fin that turns a vane against a friction moment. [m²]
 *
 * @param wanted - Friction [N m], wind [m/s], angle off the wind [rad], arm [m], aspect ratio [-]
 * @source `windMomentNm` solved for the area.
 */
export function finAreaForM2(wanted: {
  readonly frictionNm: number;
  readonly speedMPerS: number;
  readonly offRad: number;
  readonly armM: number;
  readonly aspectRatio: number;
}): number {
  return wanted.frictionNm / windMomentNm({ ...wanted, finAreaM2: 1 }, wanted.speedMPerS, wanted.offRad);
}
