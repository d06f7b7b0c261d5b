import type { Review } from '../review.ts';
import type { ReviewTable } from './reviewTable.ts';
import { headingText, intervalText, meanText, percentText } from './words.ts';

export function roseTable({ rose }: Review): ReviewTable[] {
  if (!rose) return [];
  const bounds = rose.layout.speedBoundsMPerS;
  const classes = bounds
    ? [0, ...bounds].map((from, i) => `${from}${bounds[i] === undefined ? '+' : `–${bounds[i]}`} m/s`)
    : ['any speed'];
  const share = ({
    share: of,
    interval,
    bounds: missing,
  }: {
    share: number;
    interval: (typeof rose.petals)[0]['interval'];
    bounds: (typeof rose.petals)[0]['bounds'];
  }) => [percentText(of, 2), intervalText(interval, 2, ' %', 100), intervalText(missing, 1, ' %', 100)];
  return [
    {
      name: 'rose',
      title: 'Rose by sector and speed class',
      defined: ['rose', 'calm', 'interval', 'missing'],
      headings: ['sector', 'share', '95 % interval', 'bounds for missing time', ...classes],
      rows: [
        ...rose.petals.map((petal) => [
          headingText(petal.centreDeg, 2),
          ...share(petal),
          ...petal.byClass.map((of) => percentText(of, 2)),
        ]),
        ...(rose.calm ? [['calm', ...share(rose.calm), ...classes.map(() => '')]] : []),
      ],
    },
  ];
}

export function comparisonTable({ comparison }: Review): ReviewTable[] {
  if (!comparison) return [];
  return [
    {
      name: 'comparison',
      title: `By sector, beside ${comparison.against}`,
      defined: ['comparison', 'rose', 'interval'],
      headings: [
        'sector',
        'share',
        'other’s share',
        'difference',
        '95 % apart',
        'mean speed [m/s]',
        'other’s [m/s]',
        'turned by [°]',
        'speed ratio',
      ],
      rows: comparison.sectors.map((one) => [
        headingText(one.centreDeg, 2),
        percentText(one.share, 2),
        percentText(one.otherShare, 2),
        percentText(one.difference, 2),
        one.isApart === null ? 'not known' : one.isApart ? 'yes' : 'no',
        meanText(one.speed, 2),
        meanText(one.otherSpeed, 2),
        meanText(one.turnDeg, 1),
        meanText(one.speedRatio, 3),
      ]),
    },
  ];
}
