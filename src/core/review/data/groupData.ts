import type { BlockMean } from '../../wind/index.ts';
import type { GroupFigures } from '../figures/groupFigures.ts';
import { column, ends, isoTime, type DataColumn } from './dataTable.ts';

const INTERVAL = 'the 95 % interval from week to week; empty below two weeks';

function mean(
  what: string,
  unit: string,
  meaning: string,
  of: (figures: GroupFigures) => BlockMean | null,
): DataColumn<GroupFigures>[] {
  return [
    column(`${what} [${unit}]`, meaning, (figures) => of(figures)?.mean ?? null),
    ...ends(what, unit, INTERVAL, (figures: GroupFigures) => of(figures)?.interval),
  ];
}

/** Columns that every group of ten-minute periods has. */
export const groupColumns: readonly DataColumn<GroupFigures>[] = [
  column('periods [-]', 'Ten-minute periods with any sample.', ({ periods }) => periods),
  column('samples [-]', 'Samples received, readable or not.', ({ samples }) => samples),
  ...mean('mean speed', 'm/s', 'Scalar mean of all speeds, calms with them.', ({ speed }) => speed),
  column('mean heading [deg]', 'Mean of unit vectors, calms left out.', ({ headingDeg }) => headingDeg),
  column(
    'mean heading, half of 95 % interval [deg]',
    `Half of ${INTERVAL}.`,
    ({ headingWithinDeg }) => headingWithinDeg,
  ),
  column('agreement [-]', 'Length of the mean unit vector.', ({ agreement }) => agreement),
  column(
    'spread of direction [deg]',
    'Standard deviation by Yamartino’s estimator.',
    ({ spreadDeg }) => spreadDeg,
  ),
  column('vector speed [m/s]', 'Speed of the mean wind vector.', ({ vectorSpeedMPerS }) => vectorSpeedMPerS),
  column(
    'vector heading [deg]',
    'Where the mean wind vector comes from.',
    ({ vectorHeadingDeg }) => vectorHeadingDeg,
  ),
  column('steadiness [-]', 'Vector speed over scalar mean speed.', ({ steadiness }) => steadiness),
  ...mean('calm share', '-', 'Share of calm samples among those with a speed.', ({ calmShare }) => calmShare),
  ...mean(
    'turbulence intensity',
    '-',
    'Deviation over mean of each period, averaged.',
    ({ turbulenceIntensity }) => turbulenceIntensity,
  ),
  ...mean('gust factor', '-', 'Gust over mean of each period, averaged.', ({ gustFactor }) => gustFactor),
  column('highest gust [m/s]', 'Highest 3 s mean.', ({ gust }) => gust?.speedMPerS ?? null),
  column('highest gust at', 'End of its 3 s, UTC.', ({ gust }) => (gust ? isoTime(gust.atMs) : null)),
  column(
    'wind run [km]',
    'Way of the air in the time measured; gaps add nothing.',
    ({ windRunKm }) => windRunKm,
  ),
];

/** The same columns for a thing that has such figures. */
export function groupColumnsOf<Row>(figuresOf: (row: Row) => GroupFigures): DataColumn<Row>[] {
  return groupColumns.map(({ of, ...rest }) => ({ ...rest, of: (row) => of(figuresOf(row)) }));
}
