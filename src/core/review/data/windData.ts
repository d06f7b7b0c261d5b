import type { BlockMean } from '../../wind/index.ts';
import type { ComparedSector } from '../figures/comparison.ts';
import type { ForceFigures } from '../figures/distribution.ts';
import type { Review } from '../review.ts';
import { column, dataTable, ends, isoTime, type DataColumn, type DataTable } from './dataTable.ts';
import { groupColumnsOf } from './groupData.ts';

type Petal = NonNullable<Review['rose']>['petals'][number];
type Slice = Omit<Petal, 'centreDeg' | 'byClass'> & Partial<Pick<Petal, 'centreDeg' | 'byClass'>>;

/** The rose, its calms last as a row without a sector. */
export function roseData({ rose }: Review): DataTable[] {
  if (!rose) return [];
  const bounds = rose.layout.speedBoundsMPerS;
  const classes = bounds
    ? [0, ...bounds].map((from, i) => `share of ${from} to ${bounds[i] ?? 'any'} m/s [-]`)
    : ['share of any speed [-]'];
  const slices: readonly Slice[] = [...rose.petals, ...(rose.calm ? [rose.calm] : [])];
  return [
    dataTable('rose', slices, [
      column(
        'sector centre [deg]',
        'Middle of the sector; empty in the row of the calms.',
        ({ centreDeg }) => centreDeg ?? null,
      ),
      column('share [-]', 'Share of the time, as weighted.', ({ share }) => share),
      ...ends(
        'share, 95 % interval',
        '-',
        'the 95 % interval; empty below two weeks',
        (one: Slice) => one.interval,
      ),
      ...ends(
        'share, missing time',
        '-',
        'what the share would be whatever the missing time held',
        (one: Slice) => one.bounds,
      ),
      column(
        'readings [-]',
        'Weight of the readings in it, before any weighting.',
        ({ readings }) => readings,
      ),
      ...classes.map((heading, i) =>
        column<Slice>(
          heading,
          'Share of the time in that speed class.',
          ({ byClass }) => byClass?.[i] ?? null,
        ),
      ),
    ]),
  ];
}

/** Distribution by force and by class. */
export function distributionData({ distribution }: Review): DataTable[] {
  if (!distribution) return [];
  return [
    dataTable('beaufort', distribution.forces, [
      column('force', 'Force of the Beaufort scale.', ({ force }) => force.force),
      column('name', 'Its name.', ({ force }) => force.name),
      column('from [m/s]', 'Lower bound of the force.', ({ force }) => force.fromMPerS),
      column('share [-]', 'Share of ten-minute periods.', ({ share }) => share),
      ...ends('share, 95 % interval', '-', 'the 95 % interval', ({ interval }: ForceFigures) => interval),
      ...groupColumnsOf(({ figures }: ForceFigures) => figures),
    ]),
    dataTable(
      'distribution',
      distribution.shares.map((share, from) => ({ share, from })),
      [
        column('from [m/s]', 'Lower bound of the class.', ({ from }) => from),
        column('to [m/s]', 'Upper bound, not part of it.', ({ from }) => from + 1),
        column('share [-]', 'Share of ten-minute periods.', ({ share }) => share),
      ],
    ),
  ];
}

export function gustData({ gusts, extremes }: Review): DataTable[] {
  return [
    dataTable('gusts', gusts, [
      column('at', 'End of the 3 s of the gust, UTC.', ({ atMs }) => isoTime(atMs)),
      column('gust [m/s]', 'Highest 3 s mean.', ({ speedMPerS }) => speedMPerS),
      column('period end', 'End of its ten minutes, UTC.', ({ endMs }) => isoTime(endMs)),
      column('mean speed [m/s]', 'Mean of its ten minutes.', ({ meanMPerS }) => meanMPerS),
      column('mean heading [deg]', 'Mean heading of its ten minutes.', ({ headingDeg }) => headingDeg),
    ]),
    dataTable('extremes', extremes, [
      column(
        'return period [a]',
        'Years after which it is exceeded once on average.',
        ({ returnYears }) => returnYears,
      ),
      column(
        'speed [m/s]',
        'Highest wind of a year that is exceeded so seldom.',
        ({ level }) => level?.speedMPerS ?? null,
      ),
      ...ends(
        'speed, 95 % interval',
        'm/s',
        'the 95 % interval',
        ({ level }: Review['extremes'][number]) => level?.interval,
      ),
      column('why not', 'Why it is not given.', ({ why }) => why),
    ]),
  ];
}

function mean(
  what: string,
  unit: string,
  meaning: string,
  of: (sector: ComparedSector) => BlockMean | null,
): DataColumn<ComparedSector>[] {
  return [
    column(`${what} [${unit}]`, meaning, (sector) => of(sector)?.mean ?? null),
    ...ends(what, unit, 'its 95 % interval', (sector: ComparedSector) => of(sector)?.interval),
  ];
}

export function comparisonData({ comparison }: Review): DataTable[] {
  if (!comparison) return [];
  return [
    dataTable('comparison', comparison.sectors, [
      column('sector centre [deg]', 'Middle of the sector.', ({ centreDeg }) => centreDeg),
      column('share [-]', 'Share of the time here.', ({ share }) => share),
      column(
        'other share [-]',
        'Share of the time in what it is compared with.',
        ({ otherShare }) => otherShare,
      ),
      column('difference [-]', 'The other’s share less this one’s.', ({ difference }) => difference),
      column('intervals apart', 'yes, no, or empty where an interval is not known.', ({ isApart }) =>
        isApart === null ? null : isApart ? 'yes' : 'no',
      ),
      ...mean('mean speed', 'm/s', 'Mean of the periods from that sector.', ({ speed }) => speed),
      ...mean('other mean speed', 'm/s', 'The same of the other.', ({ otherSpeed }) => otherSpeed),
      ...mean(
        'turned by',
        'deg',
        'The other’s heading less this one’s, same ten minutes.',
        ({ turnDeg }) => turnDeg,
      ),
      ...mean(
        'speed ratio',
        '-',
        'The other’s speed over this one’s, same ten minutes.',
        ({ speedRatio }) => speedRatio,
      ),
    ]),
  ];
}
