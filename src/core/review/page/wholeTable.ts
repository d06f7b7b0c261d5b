import { showNumber } from '../../units/index.ts';
import type { GroupFigures } from '../figures/groupFigures.ts';
import type { Review } from '../review.ts';
import type { ReviewTable } from './reviewTable.ts';
import { headingText, instantText, intervalText, NOTHING, numberText, percentText } from './words.ts';

/** Figure, value, and its interval or what it rests on. */
type Row = readonly [string, string, string];

function directionRows({
  headingDeg,
  headingWithinDeg,
  spreadDeg,
  agreement,
  ...whole
}: GroupFigures): Row[] {
  const within = headingWithinDeg === null ? NOTHING : `± ${showNumber(headingWithinDeg, 1)}°`;
  const way =
    whole.vectorSpeedMPerS === null
      ? NOTHING
      : `${showNumber(whole.vectorSpeedMPerS, 2)} m/s from ${headingText(whole.vectorHeadingDeg)}`;
  return [
    ['Mean heading', headingText(headingDeg), within],
    [
      'Spread of direction',
      spreadDeg === null ? NOTHING : `${showNumber(spreadDeg, 1)}°`,
      `agreement ${numberText(agreement, 3)}`,
    ],
    ['Vector mean', way, `steadiness ${numberText(whole.steadiness, 3)}`],
  ];
}

function speedRows({ whole, coverage }: Review): Row[] {
  const { speed, calmShare, gust, turbulenceIntensity, gustFactor, windRunKm } = whole;
  if (!speed) return [['Mean speed', NOTHING, 'the record holds no speed']];
  const calm = calmShare?.interval ?? null;
  const kept = calm && { low: Math.max(0, calm.low), high: Math.min(1, calm.high) };
  return [
    ['Mean speed', `${showNumber(speed.mean, 2)} m/s`, intervalText(speed.interval, 2, ' m/s')],
    ['Calm', percentText(calmShare?.mean), intervalText(kept, 1, ' %', 100)],
    [
      'Highest gust',
      gust ? `${showNumber(gust.speedMPerS, 1)} m/s` : NOTHING,
      gust ? instantText(gust.atMs) : 'samples are too far apart for a mean over 3 s',
    ],
    [
      'Turbulence intensity',
      numberText(turbulenceIntensity?.mean, 3),
      intervalText(turbulenceIntensity?.interval, 3),
    ],
    ['Gust factor', numberText(gustFactor?.mean, 3), intervalText(gustFactor?.interval, 3)],
    [
      'Wind run',
      `${showNumber(windRunKm!, 0)} km`,
      `in ${percentText(coverage.whole.speed)} of the time, gaps add nothing`,
    ],
  ];
}

function fitRows({ distribution }: Review): Row[] {
  if (!distribution) return [];
  const { weibull: fit, power } = distribution;
  const fitted: Row[] =
    'why' in fit
      ? [['Weibull fit', NOTHING, fit.why]]
      : [
          ['Weibull shape', showNumber(fit.shape, 3), intervalText(fit.shapeInterval, 3)],
          [
            'Weibull scale',
            `${showNumber(fit.scaleMPerS, 2)} m/s`,
            intervalText(fit.scaleIntervalMPerS, 2, ' m/s'),
          ],
        ];
  return [
    ...fitted,
    'why' in power
      ? ['Power density', NOTHING, power.why]
      : [
          'Power density',
          `${showNumber(power.wattsPerM2, 0)} W/m²`,
          `standard error ${showNumber(power.standardError, 0)} W/m²`,
        ],
  ];
}

function instrumentRows({ coverage, halfWidth, northSigmaDeg, hasCalibration, distribution }: Review): Row[] {
  const { leastDeg, mostDeg, source } = halfWidth;
  const width =
    leastDeg === mostDeg
      ? `± ${showNumber(leastDeg, 2)}°`
      : `± ${showNumber(leastDeg, 2)}° to ± ${showNumber(mostDeg, 2)}°`;
  const { both, speed, heading } = coverage.whole;
  return [
    [
      'Coverage',
      percentText(distribution ? both : heading),
      `speed ${percentText(speed)}, direction ${percentText(heading)}`,
    ],
    [
      'Width of a reading',
      width,
      source === 'as-built' ? 'as the recorded turn found it' : 'as drawn, no recorded turn yet',
    ],
    northSigmaDeg === null
      ? ['North', 'set by hand', 'not known how surely; run fit north']
      : ['North', `± ${showNumber(northSigmaDeg, 2)}°`, 'standard error of its setting'],
    [
      'Cups',
      hasCalibration ? 'calibrated' : 'no calibration in the instrument file',
      'taken to be within 5 % of the speed',
    ],
  ];
}

/** The figures of the whole time. */
export function wholeTable(review: Review): ReviewTable {
  return {
    name: 'whole',
    title: 'The whole time',
    defined: [
      ...(['heading', 'spread', 'vector', 'speed', 'calm', 'gust', 'turbulence', 'run'] as const),
      ...(['distribution', 'power', 'coverage', 'interval', 'instrument'] as const),
    ],
    headings: ['figure', 'value', '95 % interval, or what it rests on'],
    rows: [
      ...directionRows(review.whole),
      ...speedRows(review),
      ...fitRows(review),
      ...instrumentRows(review),
    ],
  };
}
