import { Body, Equator, Horizon, Observer } from 'astronomy-engine';

/** Where an instrument stands. */
export interface SunPlace {
  /** North positive. [deg] */
  readonly latitudeDeg: number;
  /** East positive. [deg] */
  readonly longitudeDeg: number;
}

/**
 * Height of the sun over the horizon, with the usual refraction.
 *
 * @param atMs - Instant. [ms UTC]
 * @returns Negative at night. [deg]
 */
export function sunElevationDeg({ latitudeDeg, longitudeDeg }: SunPlace, atMs: number): number {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const date = new Date(atMs);
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true);
  return Horizon(date, observer, ra, dec, 'normal').altitude;
}
