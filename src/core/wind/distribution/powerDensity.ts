import { requireAtLeast, requirePositive } from '../refusal.ts';

/** Density of the air at 15 °C and 101 325 Pa. [kg/m³] */
export const STANDARD_AIR_KG_PER_M3 = 1.225;

/** Gas constant of dry air. [J/(kg K)] */
const DRY_AIR = 287.05;

/** 0 °C. [K] */
const ZERO_CELSIUS_K = 273.15;

/**
 * Density of dry air; humid air is up to 1 % lighter in summer.
 *
 * @param pressurePa - At the station, not reduced to sea level. [Pa], > 0
 * @param temperatureC - Air temperature. [°C], above -273.15
 * @returns [kg/m³]
 * @throws `wind/bad-reading` when out of range.
 * @source Ideal gas law; constant of ISO 2533 (standard atmosphere), value from memory.
 * @check src/core/wind/distribution/powerDensity.test.ts
 */
export function airDensity(pressurePa: number, temperatureC: number): number {
  requirePositive(pressurePa, 'airDensity(pressurePa)', 'Pa');
  requirePositive(temperatureC + ZERO_CELSIUS_K, 'airDensity(temperatureC + 273.15)', 'K');
  return pressurePa / (DRY_AIR * (temperatureC + ZERO_CELSIUS_K));
}

/** What a power density rests on. */
export interface PowerDensityBasis {
  /** Mean of the cube of speed: never the cube of the mean. [m³/s³], ≥ 0 */
  readonly meanCube: number;
  /** Its standard error, from week to week (`BlockMeanSum`). [m³/s³], ≥ 0 */
  readonly meanCubeError: number;
  /** Density of the air. [kg/m³], > 0 */
  readonly airKgPerM3: number;
  /** Its relative standard error. [-], ≥ 0 */
  readonly airRelativeError: number;
  /** Relative standard error of the cups' calibration, which counts three times. [-], ≥ 0 */
  readonly speedRelativeError: number;
}

/** Power in the wind through a square metre, with its standard error and where that comes from. */
export interface PowerDensity {
  readonly wattsPerM2: number;
  /** [W/m²] */
  readonly standardError: number;
  /** Parts of the standard error: length of the record, cups, air. [W/m²] */
  readonly parts: { readonly record: number; readonly cups: number; readonly air: number };
}

/**
 * Mean power density ½ ρ mean(v³), with the uncertainty of record, cups and air added as squares.
 *
 * @param basis - Mean cube and relative errors.
 * @throws `wind/bad-reading` when a number is out of range.
 * @source P. Jain, Wind Energy Engineering, ch. 3 (definition); JCGM 100:2008, 5.1.2 (law of propagation).
 * @check src/core/wind/distribution/powerDensity.test.ts
 */
export function powerDensity(basis: PowerDensityBasis): PowerDensity {
  const { meanCube, meanCubeError, airKgPerM3, airRelativeError, speedRelativeError } = basis;
  requireAtLeast(meanCube, 0, 'powerDensity(meanCube)', 'm³/s³');
  requireAtLeast(meanCubeError, 0, 'powerDensity(meanCubeError)', 'm³/s³');
  requirePositive(airKgPerM3, 'powerDensity(airKgPerM3)', 'kg/m³');
  requireAtLeast(airRelativeError, 0, 'powerDensity(airRelativeError)', '[-]');
  requireAtLeast(speedRelativeError, 0, 'powerDensity(speedRelativeError)', '[-]');
  const wattsPerM2 = (airKgPerM3 * meanCube) / 2;
  const parts = {
    record: (airKgPerM3 * meanCubeError) / 2,
    cups: 3 * speedRelativeError * wattsPerM2,
    air: airRelativeError * wattsPerM2,
  };
  return { wattsPerM2, standardError: Math.hypot(parts.record, parts.cups, parts.air), parts };
}
