import { showNumber } from '../../units/index.ts';
import type { Review } from '../review.ts';
import type { ReviewTable } from './reviewTable.ts';
import { headingText, instantText, intervalText, NOTHING, numberText, percentText } from './words.ts';

export function forcesTable({ distribution }: Review): ReviewTable[] {
  if (!distribution) return [];
  return [
    {
      name: 'beaufort',
      title: 'By Beaufort force of the ten-minute mean',
      defined: ['beaufort', 'gust', 'turbulence', 'interval', 'period'],
      headings: [
        'force',
        'name',
        'from [m/s]',
        'share',
        '95 % interval',
        'mean heading',
        'turbulence',
        'gust factor',
        'highest gust [m/s]',
      ],
      rows: distribution.forces.map(({ force, share, interval, figures }) => [
        String(force.force),
        force.name,
        showNumber(force.fromMPerS, 1),
        percentText(share, 2),
        intervalText(interval, 2, ' %', 100),
        headingText(figures.headingDeg),
        numberText(figures.turbulenceIntensity?.mean, 2),
        numberText(figures.gustFactor?.mean, 2),
        numberText(figures.gust?.speedMPerS, 1),
      ]),
    },
    {
      name: 'distribution',
      title: 'Ten-minute means by class of 1 m/s',
      defined: ['distribution', 'period'],
      headings: ['from [m/s]', 'to [m/s]', 'share'],
      rows: distribution.shares.map((share, i) => [String(i), String(i + 1), percentText(share, 3)]),
      isLong: true,
    },
  ];
}

export function gustsTable({ gusts }: Review): ReviewTable {
  return {
    name: 'gusts',
    title: 'Highest gusts',
    defined: ['gust', 'period'],
    headings: ['when', 'gust [m/s]', 'mean of its ten minutes [m/s]', 'mean heading', 'gust factor'],
    rows: gusts.map(({ atMs, speedMPerS, meanMPerS, headingDeg }) => [
      instantText(atMs),
      showNumber(speedMPerS, 1),
      showNumber(meanMPerS, 1),
      headingText(headingDeg),
      meanMPerS > 0 ? showNumber(speedMPerS / meanMPerS, 2) : NOTHING,
    ]),
  };
}

export function extremesTable({ extremes }: Review): ReviewTable {
  return {
    name: 'extremes',
    title: 'Winds that come back once in so many years',
    defined: ['extremes'],
    headings: ['years', 'speed [m/s]', '95 % interval, or why not'],
    rows: extremes.map(({ returnYears, level, why }) => [
      String(returnYears),
      numberText(level?.speedMPerS, 1),
      level ? intervalText(level.interval, 1) : why!,
    ]),
  };
}
