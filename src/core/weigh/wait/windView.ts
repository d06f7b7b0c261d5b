import type { SiteWind } from '../../instrument/index.ts';
import type { Degrees } from '../../units/index.ts';
import type { IndexWait } from './indexWait.ts';
import { modelWait, SWING_S, WAIT_RUN, type WaitRun } from './modelWait.ts';
import { seriesShares, seriesTurnsPerDay, seriesWait, type SeriesRow } from './seriesWait.ts';
import { windShares } from './windShares.ts';

/** What is known of the wind of a site, however it is known. */
export interface WindView {
  readonly basis: 'model' | 'recorded';
  /** Share of the wind within an arc. [-], 0..1 */
  shareIn(fromDeg: Degrees, widthDeg: Degrees): number;
  /** Wait for an index after power-up. */
  waitAt(indexDeg: Degrees): IndexWait;
  /** How far a vane turns to and fro in a day. [turns] */
  readonly turnsPerDay: number;
}

const DAY_S = 86_400;

/**
 * Turns of a vane in a day: its swings, the wandering, and the changes of weather.
 *
 * @source derived: two normal draws are 2σ/√π apart on average, a normal step is σ√(2/π), two even headings are 90
 * degrees apart.
 */
function modelTurnsPerDay({ swingDeg, hourChangeDeg, weatherHours, calmShare }: SiteWind): number {
  const swings = (DAY_S / SWING_S) * ((2 * swingDeg) / Math.sqrt(Math.PI));
  const wandering = 24 * hourChangeDeg * Math.sqrt(2 / Math.PI);
  return ((1 - calmShare) * (swings + wandering) + (24 / weatherHours) * 90) / 360;
}

/** The wind as `site.wind` states it. [deg], [h] */
export function modelledWind(wind: SiteWind, run: WaitRun = WAIT_RUN): WindView {
  const shares = windShares(wind.sectorShares);
  return {
    basis: 'model',
    shareIn: (fromDeg, widthDeg) => shares.shareIn(fromDeg, widthDeg),
    waitAt: (indexDeg) => modelWait(wind, indexDeg, run),
    turnsPerDay: modelTurnsPerDay(wind),
  };
}

/**
 * The wind as it was recorded. Swings between two rows are not in it, so wear takes them from `site.wind`.
 *
 * @param rows - In order of time. [ms], [deg], n ≥ 3
 * @param wind - Of the site, for the swings. [deg]
 */
export function recordedWind(rows: readonly SeriesRow[], wind: SiteWind): WindView {
  return {
    basis: 'recorded',
    shareIn: seriesShares(rows),
    waitAt: (indexDeg) => seriesWait(rows, indexDeg),
    turnsPerDay: Math.max(seriesTurnsPerDay(rows), modelTurnsPerDay(wind)),
  };
}
