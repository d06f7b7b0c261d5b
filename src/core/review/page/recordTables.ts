import { qualityBits, type QualityFlag } from '../../wind/index.ts';
import type { Review } from '../review.ts';
import type { ReviewTable } from './reviewTable.ts';
import { dayText, percentText } from './words.ts';

export function coverageTables({ coverage }: Review): ReviewTable[] {
  return [
    {
      name: 'quarters',
      title: 'Completeness by quarter',
      defined: ['coverage'],
      headings: ['quarter', 'speed', 'direction', 'both', 'complete'],
      rows: coverage.quarters.map(({ name, speed, heading, both, isComplete, isWhole }) => [
        name,
        percentText(speed),
        percentText(heading),
        percentText(both),
        isComplete ? 'yes' : isWhole ? 'no' : 'no, not all of it is reviewed',
      ]),
    },
    {
      name: 'days',
      title: 'Coverage by day',
      defined: ['coverage'],
      headings: ['day', 'speed', 'direction', 'both'],
      rows: coverage.days.map(({ startMs, speed, heading, both }) => [
        dayText(startMs),
        percentText(speed, 2),
        percentText(heading, 2),
        percentText(both, 2),
      ]),
      isLong: true,
    },
  ];
}

const flagNames = Object.keys(qualityBits) as QualityFlag[];

export function qualityTables({ quality, samples }: Review): ReviewTable[] {
  return [
    {
      name: 'quality',
      title: 'Quality flags, beside the data',
      defined: ['quality'],
      headings: ['flag', 'samples', 'share'],
      rows: flagNames.map((flag) => [
        flag,
        String(quality.totals[flag]),
        percentText(quality.totals[flag] / samples, 3),
      ]),
    },
    {
      name: 'quality-days',
      title: 'Quality flags by day',
      defined: ['quality'],
      headings: ['day', ...flagNames],
      rows: quality.days.map(({ startMs, counts }) => [
        dayText(startMs),
        ...flagNames.map((flag) => String(counts[flag])),
      ]),
      isLong: true,
    },
    {
      name: 'quality-spans',
      title: 'Stretches with a flag',
      defined: ['quality'],
      headings: ['flag', 'from', 'to', 'found', 'accepted', 'source'],
      rows: quality.spans.map(({ flag, fromMs, toMs, got, allowed, source }) => [
        flag,
        new Date(fromMs).toISOString(),
        new Date(toMs).toISOString(),
        got,
        allowed,
        source,
      ]),
      isLong: true,
    },
  ];
}
