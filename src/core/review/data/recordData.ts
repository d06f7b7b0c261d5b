import { qualityBits, type QualityFlag } from '../../wind/index.ts';
import type { Review } from '../review.ts';
import { column, dataTable, isoTime, type DataColumn, type DataTable } from './dataTable.ts';

interface Shares {
  readonly speed: number;
  readonly heading: number;
  readonly both: number;
}

const shares: readonly DataColumn<Shares>[] = [
  column('speed [-]', 'Usable speeds over the samples that the clock expects.', ({ speed }) => speed),
  column(
    'direction [-]',
    'Usable directions, a calm being one, over those expected.',
    ({ heading }) => heading,
  ),
  column('both [-]', 'Samples with both, over those expected.', ({ both }) => both),
];

export function coverageData({ coverage }: Review): DataTable[] {
  return [
    dataTable('quarters', coverage.quarters, [
      column('quarter', 'Calendar quarter, UTC.', ({ name }) => name),
      ...shares,
      column('complete', 'Whether speed, direction and both reach 90 %.', ({ isComplete }) =>
        isComplete ? 'yes' : 'no',
      ),
      column('reviewed whole', 'Whether all of the quarter is reviewed.', ({ isWhole }) =>
        isWhole ? 'yes' : 'no',
      ),
    ]),
    dataTable('days', coverage.days, [
      column('day', 'Day of UTC.', ({ startMs }) => isoTime(startMs).slice(0, 10)),
      ...shares,
    ]),
  ];
}

const flagNames = Object.keys(qualityBits) as QualityFlag[];

export function qualityData({ quality, samples }: Review): DataTable[] {
  return [
    dataTable('quality', flagNames, [
      column('flag', 'Name of the flag; docs/review.md tells what it asks.', (flag) => flag),
      column('samples [-]', 'Samples that carry it.', (flag) => quality.totals[flag]),
      column('share [-]', 'Of all samples.', (flag) => quality.totals[flag] / samples),
    ]),
    dataTable('quality-days', quality.days, [
      column('day', 'Day of UTC.', ({ startMs }) => isoTime(startMs).slice(0, 10)),
      ...flagNames.map((flag) =>
        column<Review['quality']['days'][number]>(
          `${flag} [-]`,
          'Samples of that day that carry the flag.',
          ({ counts }) => counts[flag],
        ),
      ),
    ]),
    dataTable('quality-spans', quality.spans, [
      column('flag', 'Name of the flag.', ({ flag }) => flag),
      column('from', 'First sample, UTC.', ({ fromMs }) => isoTime(fromMs)),
      column('to', 'Last sample, UTC.', ({ toMs }) => isoTime(toMs)),
      column('found', 'What was found, in words.', ({ got }) => got),
      column('accepted', 'What would be accepted, in words.', ({ allowed }) => allowed),
      column('source', 'Who set the limit.', ({ source }) => source),
    ]),
  ];
}

export function faultsData({ findings }: Review): DataTable {
  return dataTable('faults', findings, [
    column('fault', 'Kind of the fault.', ({ kind }) => kind),
    column('since', 'From when on, UTC.', ({ sinceMs }) => isoTime(sinceMs)),
    column('until', 'When it was over, UTC; empty while it lasts.', ({ untilMs }) =>
      untilMs === null ? null : isoTime(untilMs),
    ),
    column('noticed', 'When the evidence was enough, UTC.', ({ noticedMs }) => isoTime(noticedMs)),
    column(
      'chance of a false alarm [1/a]',
      'Chance that a sound instrument shows as much once in a year.',
      ({ falseAlarmChance }) => falseAlarmChance,
    ),
    column(
      'spoils',
      'What is left out of every mean: heading, speed, both or nothing.',
      ({ spoils }) => spoils,
    ),
    column('days left [d]', 'Until readings go wrong, where that can be told.', ({ daysLeft }) => daysLeft),
    column('title', 'The fault in a line.', ({ title }) => title),
    column('evidence', 'What in the record says so.', ({ evidence }) => evidence),
    column('what to do', 'The one thing to do.', ({ todo }) => todo),
  ]);
}

/** Every cause that was matched with the words of a month, a row each. */
export function causesData({ prints }: Review): DataTable {
  const rows = prints.flatMap(({ month, causes }) =>
    causes.map((cause, i) => ({ month, place: i + 1, ...cause })),
  );
  return dataTable('causes', rows, [
    column('month', 'Month of UTC.', ({ month }) => month),
    column('place [-]', '1 = the likeliest.', ({ place }) => place),
    column('cause', 'What would explain the words.', ({ title }) => title),
    column('share of the odds [-]', 'Among everything that was tried.', ({ probability }) => probability),
    column(
      'log odds [-]',
      'Natural logarithm of its likelihood over that of the best.',
      ({ logOdds }) => logOdds,
    ),
  ]);
}
