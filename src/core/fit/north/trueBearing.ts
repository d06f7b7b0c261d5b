import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import geomagnetism from 'geomagnetism';
import { throwIfAny, VanewrightError, type Problem } from '../../error/index.ts';
import { degToRad, radToDeg, showDegrees, wrapDegrees, type Degrees } from '../../units/index.ts';
import { placeProblems, type Place } from './place.ts';

/** A bearing from true north, and how sure it is. */
export interface TrueBearing {
  /** Clockwise from true north. [deg], [0, 360) */
  readonly bearingDeg: Degrees;
  /** Standard error, holding the vane included. [deg] */
  readonly sigmaDeg: Degrees;
  /** What the vane must point at, in words: `the church tower`. */
  readonly target: string;
  /** What may spoil it. */
  readonly cautions: readonly string[];
}

/** How well a hand holds a vane at a far mark. [deg]; common practice, no source */
const HOLDING_DEG = 1;
/** A sphere in place of the flattened earth turns bearings by at most this. [deg] */
const SPHERE_DEG = 0.2;
/** Nearer than this a metre to the side is more than half a degree. [m] */
const NEAR_M = 100;
const EARTH_RADIUS_M = 6_371_000;

/**
 * Bearing of a landmark whose place is known from a map.
 *
 * @param from - Where the vane stands. [deg]
 * @param to - Where the landmark stands. [deg]
 * @param name - What it is, in words.
 * @returns Start of the great circle on a sphere. [deg]
 * @throws `fit/no-such-place`, `fit/landmark-too-near`
 * @source Great-circle bearing, atan2(sin Δλ cos φ₂, cos φ₁ sin φ₂ − sin φ₁ cos φ₂ cos Δλ).
 * @check src/core/fit/north/north.test.ts
 */
export function landmarkBearing(from: Place, to: Place, name: string): TrueBearing {
  throwIfAny([...placeProblems(from, 'site'), ...placeProblems(to, 'landmark')]);
  const [p1, p2] = [degToRad(from.latitudeDeg), degToRad(to.latitudeDeg)];
  const turn = degToRad(to.longitudeDeg - from.longitudeDeg);
  const y = Math.sin(turn) * Math.cos(p2);
  const x = Math.cos(p1) * Math.sin(p2) - Math.sin(p1) * Math.cos(p2) * Math.cos(turn);
  const away = Math.atan2(
    Math.hypot(x, y),
    Math.sin(p1) * Math.sin(p2) + Math.cos(p1) * Math.cos(p2) * Math.cos(turn),
  );
  const distanceM = away * EARTH_RADIUS_M;
  if (distanceM < NEAR_M) throwIfAny([tooNear(distanceM)]);
  // Coordinates off a map are good to some ten metres.
  const mapDeg = radToDeg(Math.atan2(10, distanceM));
  return {
    bearingDeg: wrapDegrees(radToDeg(Math.atan2(y, x))),
    sigmaDeg: Math.hypot(HOLDING_DEG, mapDeg, SPHERE_DEG),
    target: name,
    cautions: [],
  };
}

function tooNear(distanceM: number): Problem {
  return {
    code: 'fit/landmark-too-near',
    what: 'The landmark is so near that its bearing cannot be told from a map.',
    where: 'landmark',
    got: `${distanceM.toFixed(0)} m away`,
    allowed: `${NEAR_M} m or more`,
    fix: 'Choose a tower or hilltop 1000 m away or farther.',
  };
}

/** Bearing that the maker knows already, as from a map with a protractor. [deg] */
export function knownBearing(bearingDeg: Degrees, sigmaDeg: Degrees, name: string): TrueBearing {
  return {
    bearingDeg: wrapDegrees(bearingDeg),
    sigmaDeg: Math.hypot(HOLDING_DEG, sigmaDeg),
    target: name,
    cautions: [],
  };
}

/** Between these heights a shadow is long enough and the air does not bend it sideways. [deg]; own choice */
const SUN_LOW_DEG = 3;
const SUN_HIGH_DEG = 60;
/** The sun is half a degree wide, and a shadow's edge as soft. [deg] */
const SUN_DEG = 0.25;

/**
 * Bearing of the sun at an instant, for setting a vane by its own shadow.
 *
 * @param site - Where the vane stands. [deg]
 * @param at - ISO 8601 with a zone; a minute off is up to half a degree at noon in the tropics.
 * @throws `fit/no-such-place`, `fit/not-an-instant`, `fit/sun-unfit`
 * @check test/published/nrel-spa (the worked example of NREL/TP-560-34302)
 */
export function sunBearing(site: Place, at: string): TrueBearing {
  const instant = instantOf(at);
  throwIfAny(placeProblems(site, 'site'));
  const { azimuth, altitude } = sunAt(site, instant);
  if (altitude < SUN_LOW_DEG || altitude > SUN_HIGH_DEG) throwIfAny([sunUnfit(altitude, at)]);
  const later = sunAt(site, new Date(instant.getTime() + 60_000)).azimuth;
  const perMinute = Math.abs(wrapDegrees(later - azimuth + 180) - 180);
  return {
    bearingDeg: azimuth,
    sigmaDeg: Math.hypot(HOLDING_DEG, SUN_DEG, perMinute / 2),
    target: 'the sun, so that its own shadow falls straight behind it',
    cautions: [
      'Never look at the sun, not through the vane either: watch the shadow of the arm on a flat board.',
      `The sun moves by ${showDegrees(Number(perMinute.toFixed(2)))} in a minute: set the clock first and do it at that minute.`,
    ],
  };
}

function sunAt({ latitudeDeg, longitudeDeg }: Place, instant: Date): { azimuth: number; altitude: number } {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator(Body.Sun, instant, observer, true, true);
  const { azimuth, altitude } = Horizon(instant, observer, ra, dec, 'normal');
  return { azimuth: wrapDegrees(azimuth), altitude };
}

function instantOf(at: string): Date {
  const instant = new Date(at);
  const isZoned = /(Z|[+-]\d\d:?\d\d)$/.test(at);
  if (Number.isNaN(instant.getTime()) || !isZoned) {
    throwIfAny([
      {
        code: 'fit/not-an-instant',
        what: 'The time is not an instant: its zone must be told, or summer time would turn north by 15 degrees.',
        where: 'at',
        got: at,
        allowed: 'ISO 8601 with a zone',
        fix: 'Write it like 2024-05-17T12:30:00+02:00 or 2024-05-17T10:30:00Z.',
      },
    ]);
  }
  return instant;
}

function sunUnfit(altitudeDeg: number, at: string): Problem {
  const isLow = altitudeDeg < SUN_LOW_DEG;
  return {
    code: 'fit/sun-unfit',
    what: isLow
      ? 'The sun is too low, or below the horizon.'
      : 'The sun is so high that the shadow is short.',
    where: `at ${at}`,
    got: `${altitudeDeg.toFixed(1)} deg above the horizon`,
    allowed: `${SUN_LOW_DEG} to ${SUN_HIGH_DEG} deg`,
    fix: isLow
      ? 'Choose a moment two hours after sunrise.'
      : 'Choose a moment three hours before or after noon.',
  };
}

/** How well a good hand compass reads, and how steel near it may turn it. [deg]; common practice, no source */
const COMPASS_DEG = 2;
/** Below this the compass points nowhere; below the second it needs care. [nT]; limits of the model's own report, values from memory */
const BLACKOUT_NT = 2000;
const CAUTION_NT = 6000;

/**
 * True bearing of what a compass reads: magnetic bearing plus declination, east counted plus.
 *
 * @param magneticDeg - Read off the compass. [deg]
 * @param site - Where it is read. [deg]
 * @param at - Day, ISO 8601 with a zone.
 * @throws `fit/no-such-place`, `fit/not-an-instant`, `fit/no-magnetic-model`, `fit/compass-useless`
 * @source World Magnetic Model 2025 (NOAA, British Geological Survey); error of declination √(0.26² + (5417/H)²),
 * its technical report, value from memory.
 * @check test/published/wmm2025
 */
export function compassBearing(magneticDeg: Degrees, site: Place, at: string, name: string): TrueBearing {
  throwIfAny(placeProblems(site, 'site'));
  const { declinationDeg, sigmaDeg, horizontalNt } = declinationAt(site, at);
  const cautions = [
    'Stand clear of steel, wires and the mast itself: step back five metres and sight along the mast.',
  ];
  if (horizontalNt < CAUTION_NT)
    cautions.push('So near to a magnetic pole a compass is sluggish: use the sun or a landmark.');
  return {
    bearingDeg: wrapDegrees(magneticDeg + declinationDeg),
    sigmaDeg: Math.hypot(HOLDING_DEG, COMPASS_DEG, sigmaDeg),
    target: name,
    cautions,
  };
}

/** Declination with its standard error. */
export interface Declination {
  /** East plus, west minus: true = magnetic + declination. [deg] */
  readonly declinationDeg: Degrees;
  readonly sigmaDeg: Degrees;
  /** Strength that turns a compass needle. [nT] */
  readonly horizontalNt: number;
}

/**
 * Magnetic declination of a place and day.
 *
 * @param heightKm - Above the ellipsoid. [km]
 * @throws `fit/not-an-instant`, `fit/no-magnetic-model`, `fit/compass-useless`
 * @check test/published/wmm2025
 */
export function declinationAt({ latitudeDeg, longitudeDeg }: Place, at: string, heightKm = 0): Declination {
  const instant = instantOf(at);
  const { decl, h } = magneticModel(instant, at).point([latitudeDeg, longitudeDeg, heightKm]);
  if (h < BLACKOUT_NT) {
    throwIfAny([
      {
        code: 'fit/compass-useless',
        what: 'So near to a magnetic pole a compass points nowhere.',
        where: `at ${latitudeDeg}, ${longitudeDeg}`,
        got: `${h.toFixed(0)} nT across the needle`,
        allowed: `${BLACKOUT_NT} nT or more`,
        fix: 'Use the sun or a landmark.',
      },
    ]);
  }
  return { declinationDeg: decl, sigmaDeg: Math.hypot(0.26, 5417 / h), horizontalNt: h };
}

function magneticModel(instant: Date, at: string) {
  try {
    return geomagnetism.model(instant);
  } catch {
    const problem: Problem = {
      code: 'fit/no-magnetic-model',
      what: 'The magnetic model in this program does not reach that day.',
      where: 'at',
      got: at,
      allowed: 'a day from 2015 to November 2029',
      fix: 'Use the sun or a landmark, or a later version of vanewright.',
    };
    throw new VanewrightError(problem);
  }
}
