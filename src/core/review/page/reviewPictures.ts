import type { Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { calendarPicture } from '../pictures/calendarPicture.ts';
import { clockPicture } from '../pictures/clockPicture.ts';
import { comparisonPicture } from '../pictures/comparisonPicture.ts';
import { distributionPicture } from '../pictures/distributionPicture.ts';
import { rosePicture } from '../pictures/rosePicture.ts';
import type { Review } from '../review.ts';
import type { DefinitionId } from './definitions.ts';
import { weightText } from './weightText.ts';
import { dayText, percentText } from './words.ts';

/** One picture of a review with what explains it. */
export interface ReviewPicture {
  /** Name of its file, without the ending. */
  readonly name: string;
  readonly caption: string;
  readonly defined: readonly DefinitionId[];
  readonly drawing: Markup;
}

/** What must stand on the rose itself. */
function roseWords({ rose, halfWidth, fromMs, untilMs, station, equalWeight }: Review): string[] {
  const { leastDeg, mostDeg, source } = halfWidth;
  const width =
    leastDeg === mostDeg
      ? `± ${showNumber(leastDeg, 2)}°`
      : `± ${showNumber(leastDeg, 1)}° to ± ${showNumber(mostDeg, 1)}°`;
  return [
    `${station}, ${dayText(fromMs)} to ${dayText(untilMs - 1)}`,
    `weight: ${weightText(equalWeight)}`,
    ...(rose!.emptyStrata > 0 ? [`${rose!.emptyStrata} of these hold no reading`] : []),
    `a reading is spread over ${width}, ${source === 'as-built' ? 'as built' : 'as drawn'}`,
    `coverage: ${percentText(rose!.coverage)} of the time has a reading`,
    rose!.petals.some(({ interval }) => interval)
      ? 'lines with ends: 95 % interval from week to week'
      : 'no 95 % interval: shorter than two weeks',
  ];
}

/** Every picture of a review, in the order of the page. */
export function reviewPictures(review: Review): ReviewPicture[] {
  const { rose, hours, months, distribution, coverage, comparison, utcOffsetMin } = review;
  const clock =
    utcOffsetMin === 0 ? 'UTC' : `UTC ${utcOffsetMin < 0 ? '−' : '+'} ${Math.abs(utcOffsetMin)} min`;
  const byClock = (name: string, title: string, first: number, last: number): ReviewPicture => ({
    name,
    caption: `Mean speed and mean heading by ${title}; lines are 95 % intervals.`,
    defined: ['speed', 'heading', 'interval'],
    drawing: clockPicture(name === 'hours' ? hours : months, { title, first, last }),
  });
  return [
    ...(rose
      ? [
          {
            name: 'rose',
            caption: 'The rose: where the wind comes from, how often and how strong.',
            defined: ['rose', 'calm', 'interval'] as const,
            drawing: rosePicture(rose, roseWords(review)),
          },
        ]
      : []),
    byClock('hours', `hour of the day (${clock})`, 0, 23),
    byClock('months', 'month', 1, 12),
    ...(distribution
      ? [
          {
            name: 'distribution',
            caption: 'How ten-minute mean speeds are distributed.',
            defined: ['distribution', 'period'] as const,
            drawing: distributionPicture(distribution),
          },
        ]
      : []),
    ...(comparison
      ? [
          {
            name: 'comparison',
            caption: `Shares of the time beside ${comparison.against}.`,
            defined: ['comparison', 'rose'] as const,
            drawing: comparisonPicture(comparison),
          },
        ]
      : []),
    {
      name: 'calendar',
      caption: 'What the record covers, day by day.',
      defined: ['coverage'],
      drawing: calendarPicture(coverage.days, distribution ? 'both' : 'heading'),
    },
  ];
}
