import erfc from '@stdlib/math-base-special-erfc';
import type { SiteWind } from '../../instrument/index.ts';
import { seededRandom, turnBetween, wrapDegrees, type Degrees, type Random } from '../../units/index.ts';
import { passesIndex, waitFigures, type IndexWait } from './indexWait.ts';
import { windShares } from './windShares.ts';

/**
 * Time from one swing of a vane to the next that owes it nothing. [s]
 *
 * Common practice, no source: gusts turn the wind about every ten seconds at a few metres a second.
 */
export const SWING_S = 10;

/** Longest stretch followed at once; a crossing within it is not missed, whatever its length. [h] */
const STRETCH_H = 0.5;

/** How much is simulated. */
export interface WaitRun {
  readonly powerUps: number;
  readonly seed: number;
  /** A power-up that has not met the index by then is counted as never. [h] */
  readonly horizonH: number;
}

/** Power-ups, seed and a year. */
export const WAIT_RUN: WaitRun = { powerUps: 1000, seed: 1, horizonH: 8760 };

/** Share of a normal distribution beyond so many standard deviations. [-] */
const tail = (sigmas: number): number => erfc(sigmas / Math.SQRT2) / 2;

/**
 * Whether the wandering direction, between two moments clear of the index, has met it in between.
 *
 * @param before - Clockwise from the index, then and now. [deg], 0..360
 * @source derived: a Brownian bridge between a and b reaches 0 with chance exp(−2ab/v), v its variance.
 */
function bridgeChance(before: Degrees, after: Degrees, variance: number): number {
  if (variance === 0) return 0;
  const near = Math.exp((-2 * before * after) / variance);
  const far = Math.exp((-2 * (360 - before) * (360 - after)) / variance);
  return Math.min(1, near + far);
}

/** Whether one of many swings about a direction reaches the index. */
function swingChance(distance: Degrees, swingDeg: Degrees, hours: number): number {
  if (swingDeg === 0) return 0;
  const each = tail(distance / swingDeg) + tail((360 - distance) / swingDeg);
  return 1 - (1 - Math.min(1, each)) ** ((hours * 3600) / SWING_S);
}

/** Follows one power-up until the index is met. */
function oneWait(wind: SiteWind, indexDeg: Degrees, horizonH: number, random: Random): number | null {
  const shares = windShares(wind.sectorShares);
  const exponential = (): number => -wind.weatherHours * Math.log(random.uniform());
  // The present weather is as old as it has yet to last: an exponential time has no memory.
  const age = Math.min(exponential(), 1e6);
  let heading = wrapDegrees(shares.draw(random) + random.normal() * wind.hourChangeDeg * Math.sqrt(age));
  let clock = 0;
  let change = exponential();
  while (clock < horizonH) {
    const hours = Math.min(STRETCH_H, change - clock);
    if (random.uniform() >= wind.calmShare) {
      const distance = wrapDegrees(heading - indexDeg);
      const turn = random.normal() * wind.hourChangeDeg * Math.sqrt(hours);
      const after = distance + turn;
      const met =
        after <= 0 ||
        after >= 360 ||
        random.uniform() < bridgeChance(distance, after, wind.hourChangeDeg ** 2 * hours) ||
        random.uniform() < swingChance(after, wind.swingDeg, hours);
      if (met) return clock + hours / 2;
      heading = wrapDegrees(heading + turn);
    }
    clock += hours;
    if (clock < change) continue;
    const next = shares.draw(random);
    if (passesIndex(heading, turnBetween(heading, next), indexDeg)) return clock;
    heading = next;
    change = clock + exponential();
  }
  return null;
}

/**
 * Wait for an index after power-up, from a model of the site's wind.
 *
 * Between changes of weather the direction wanders as a random walk, and the vane swings about it. Each change, after an
 * exponential time, draws a new direction from the site's shares, and the vane turns there the short way. In a calm
 * stretch nothing moves.
 *
 * @param wind - Of the site. [deg], [h]
 * @param indexDeg - Heading at which the vane meets the index. [deg]
 * @param run - Power-ups, seed, horizon; the same run gives the same figures. [-], [h]
 * @check test/published/index-wait (random walk and independent draws, closed forms)
 */
export function modelWait(wind: SiteWind, indexDeg: Degrees, run: WaitRun = WAIT_RUN): IndexWait {
  const random = seededRandom(run.seed);
  const found = Array.from({ length: run.powerUps }, () => oneWait(wind, indexDeg, run.horizonH, random));
  return {
    basis: 'model',
    indexDeg,
    ...waitFigures(
      found.map((wait) => wait ?? run.horizonH),
      found.map((wait) => wait !== null),
    ),
    horizonH: run.horizonH,
  };
}
