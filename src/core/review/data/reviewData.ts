import type { ClockFigures } from '../figures/byClock.ts';
import type { Review } from '../review.ts';
import { column, dataTable, ends, type DataTable } from './dataTable.ts';
import { groupColumns, groupColumnsOf } from './groupData.ts';
import { causesData, coverageData, faultsData, qualityData } from './recordData.ts';
import { comparisonData, distributionData, gustData, roseData } from './windData.ts';

function clockData(name: string, key: string, figures: readonly ClockFigures[]): DataTable {
  return dataTable(name, figures, [
    column(key, 'By local time, as asked for.', ({ of }) => of),
    ...groupColumnsOf((one: ClockFigures) => one),
  ]);
}

/** The whole time in one row, with the fit and the power. */
function wholeData(review: Review): DataTable {
  const fit = (of: Review) =>
    of.distribution && 'shape' in of.distribution.weibull ? of.distribution.weibull : null;
  const power = (of: Review) =>
    of.distribution && 'wattsPerM2' in of.distribution.power ? of.distribution.power : null;
  return dataTable(
    'whole',
    [review],
    [
      column('station', 'Name of the station.', ({ station }) => station),
      ...groupColumns.map(({ of, ...rest }) => ({ ...rest, of: ({ whole }: Review) => of(whole) })),
      column('Weibull shape [-]', 'Fitted to the ten-minute means.', (one) => fit(one)?.shape ?? null),
      ...ends('Weibull shape', '-', 'its 95 % interval', (one: Review) => fit(one)?.shapeInterval),
      column('Weibull scale [m/s]', 'Fitted to the ten-minute means.', (one) => fit(one)?.scaleMPerS ?? null),
      ...ends('Weibull scale', 'm/s', 'its 95 % interval', (one: Review) => fit(one)?.scaleIntervalMPerS),
      column('power density [W/m2]', 'With standard air.', (one) => power(one)?.wattsPerM2 ?? null),
      column(
        'power density, standard error [W/m2]',
        'Record, cups and air together.',
        (one) => power(one)?.standardError ?? null,
      ),
      column(
        'coverage, speed [-]',
        'Usable speeds over those expected.',
        ({ coverage }) => coverage.whole.speed,
      ),
      column(
        'coverage, direction [-]',
        'Usable directions over those expected.',
        ({ coverage }) => coverage.whole.heading,
      ),
      column(
        'coverage, both [-]',
        'Samples with both over those expected.',
        ({ coverage }) => coverage.whole.both,
      ),
      column(
        'half width of a reading, least [deg]',
        'What the narrowest reading covers to either side.',
        ({ halfWidth }) => halfWidth.leastDeg,
      ),
      column(
        'half width of a reading, most [deg]',
        'What the widest reading covers to either side.',
        ({ halfWidth }) => halfWidth.mostDeg,
      ),
      column(
        'north, standard error [deg]',
        'Of its setting; empty = not known.',
        ({ northSigmaDeg }) => northSigmaDeg,
      ),
    ],
  );
}

/** Every column of every table, with what it holds. */
function dictionaryOf(tables: readonly DataTable[]): DataTable {
  const all = tables.flatMap(({ name, headings, meanings }) =>
    headings.map((heading, i) => ({ name, heading, meaning: meanings[i]! })),
  );
  return dataTable('columns', all, [
    column('table', 'Name of the file.', ({ name }) => `${name}.csv`),
    column('column', 'Its heading, unit in square brackets.', ({ heading }) => heading),
    column(
      'unit',
      'Unit; - for counts and shares, empty for words and times.',
      ({ heading }) => /\[(.+)\]$/.exec(heading)?.[1] ?? null,
    ),
    column('meaning', 'What it holds.', ({ meaning }) => meaning),
  ]);
}

/**
 * The tables of a review for other programs: plain numbers, units in the headings, the ends of an interval in columns of
 * their own; `columns` says what each column of the others holds.
 *
 * @param review - As `reviewOf` gives it.
 * @check src/core/review/data/reviewData.test.ts
 */
export function reviewData(review: Review): DataTable[] {
  const tables = [
    wholeData(review),
    faultsData(review),
    causesData(review),
    ...roseData(review),
    clockData('hours', 'hour [h]', review.hours),
    clockData('months', 'month', review.months),
    ...distributionData(review),
    ...gustData(review),
    ...comparisonData(review),
    ...coverageData(review),
    ...qualityData(review),
  ];
  return [...tables, dictionaryOf(tables)];
}
