import { VanewrightError } from '../../error/index.ts';
import { turnBetween, wrapDegrees, type Degrees } from '../../units/index.ts';
import { passesIndex, waitFigures, type IndexWait } from './indexWait.ts';

/** One line of a recorded wind. */
export interface SeriesRow {
  /** Any zero. [ms] */
  readonly atMs: number;
  /** Where the wind came from. [deg] */
  readonly headingDeg: Degrees;
}

/** Rows farther apart than this many usual steps are not joined: nobody knows how the wind turned between. [-] */
const HOLE_STEPS = 5;

const HOUR_MS = 3_600_000;

/** Fewest rows that are a series. [-] */
const LEAST_ROWS = 3;

function medianStep(rows: readonly SeriesRow[]): number {
  const steps = rows.slice(1).map((row, i) => row.atMs - rows[i]!.atMs);
  return steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)]!;
}

/** Rows in order of time, one for each moment. @throws `weigh/short-series` */
export function checkedSeries(rows: readonly SeriesRow[], where: string): readonly SeriesRow[] {
  const inOrder = [...rows].sort((a, b) => a.atMs - b.atMs);
  const once = inOrder.filter((row, i) => i === 0 || row.atMs > inOrder[i - 1]!.atMs);
  if (once.length >= LEAST_ROWS) return once;
  throw new VanewrightError({
    code: 'weigh/short-series',
    what: 'The recorded wind is too short to tell anything.',
    where,
    got: `${once.length} moments`,
    allowed: `${LEAST_ROWS} or more; a month of hours is a good one`,
    fix: 'Give a file with a month of hourly directions, or leave --wind out to use site.wind.',
  });
}

/** Runs of rows without a hole. */
function stretches(rows: readonly SeriesRow[]): SeriesRow[][] {
  const longest = HOLE_STEPS * medianStep(rows);
  const all: SeriesRow[][] = [[]];
  for (const [i, row] of rows.entries()) {
    if (i > 0 && row.atMs - rows[i - 1]!.atMs > longest) all.push([]);
    all.at(-1)!.push(row);
  }
  return all;
}

/** Wait of a power-up at each row of one stretch, from its end backwards. */
function waitsOf(rows: readonly SeriesRow[], indexDeg: Degrees): { waitH: number; isMet: boolean }[] {
  const last = rows.at(-1)!;
  let metMs: number | null = null;
  const waits: { waitH: number; isMet: boolean }[] = [];
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!;
    const next = rows[i + 1];
    if (next && passesIndex(row.headingDeg, turnBetween(row.headingDeg, next.headingDeg), indexDeg)) {
      metMs = next.atMs;
    }
    waits.push({ waitH: ((metMs ?? last.atMs) - row.atMs) / HOUR_MS, isMet: metMs !== null });
  }
  return waits;
}

/**
 * Wait for an index after power-up, had the power come back at each moment of a recorded wind.
 *
 * From one row to the next the vane is taken to turn the short way. Power-ups that a hole or the end of the series cuts
 * off are counted as not met, with the time they were followed.
 *
 * @param rows - In order of time, as `checkedSeries` gives them. [ms], [deg], n ≥ 3
 * @param indexDeg - Heading at which the vane meets the index. [deg]
 * @check src/core/weigh/wait/seriesWait.test.ts
 */
export function seriesWait(rows: readonly SeriesRow[], indexDeg: Degrees): IndexWait {
  const waits = stretches(rows).flatMap((stretch) => waitsOf(stretch, indexDeg));
  return {
    basis: 'recorded',
    indexDeg,
    ...waitFigures(
      waits.map(({ waitH }) => waitH),
      waits.map(({ isMet }) => isMet),
    ),
    horizonH: (rows.at(-1)!.atMs - rows[0]!.atMs) / HOUR_MS,
  };
}

/** Turns to and fro in a day, as far as the rows tell; what happens between two rows is not seen. [-] */
export function seriesTurnsPerDay(rows: readonly SeriesRow[]): number {
  const days = (rows.at(-1)!.atMs - rows[0]!.atMs) / (24 * HOUR_MS);
  const turned = rows
    .slice(1)
    .reduce((sum, row, i) => sum + Math.abs(turnBetween(rows[i]!.headingDeg, row.headingDeg)), 0);
  return turned / 360 / days;
}

/** Reckons the share of the rows within an arc, clockwise from its first heading. [-], 0..1 */
export function seriesShares(rows: readonly SeriesRow[]): (fromDeg: Degrees, widthDeg: Degrees) => number {
  const sorted = rows.map(({ headingDeg }) => wrapDegrees(headingDeg)).sort((a, b) => a - b);
  const below = (deg: Degrees): number => {
    let [low, high] = [0, sorted.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]! < deg) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return (fromDeg, widthDeg) => {
    const from = wrapDegrees(fromDeg);
    const until = from + Math.min(360, widthDeg);
    const wrapped = until > 360 ? below(until - 360) : 0;
    return (below(Math.min(until, 360)) - below(from) + wrapped) / sorted.length;
  };
}
