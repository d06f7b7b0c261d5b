import { showNumber } from '../../units/index.ts';
import type { ClockFigures } from '../figures/byClock.ts';
import type { GroupFigures } from '../figures/groupFigures.ts';
import type { ReviewTable } from './reviewTable.ts';
import { headingText, meanText, NOTHING, numberText, percentText } from './words.ts';

/** Headings of `groupCells`. */
const GROUP = [
  'mean speed [m/s]',
  'mean heading',
  '±',
  'spread',
  'steadiness',
  'calm',
  'turbulence',
  'gust factor',
  'highest gust [m/s]',
  'wind run [km]',
  'periods',
];

function groupCells(figures: GroupFigures): string[] {
  const { speed, headingDeg, headingWithinDeg, spreadDeg, steadiness, calmShare } = figures;
  return [
    meanText(speed, 2),
    headingText(headingDeg),
    headingWithinDeg === null ? NOTHING : `${showNumber(headingWithinDeg, 0)}°`,
    spreadDeg === null ? NOTHING : `${showNumber(spreadDeg, 0)}°`,
    numberText(steadiness, 2),
    percentText(calmShare?.mean),
    numberText(figures.turbulenceIntensity?.mean, 2),
    numberText(figures.gustFactor?.mean, 2),
    numberText(figures.gust?.speedMPerS, 1),
    numberText(figures.windRunKm, 0),
    String(figures.periods),
  ];
}

export function clockTable(
  name: string,
  title: string,
  key: string,
  figures: readonly ClockFigures[],
): ReviewTable {
  return {
    name,
    title,
    defined: ['speed', 'heading', 'spread', 'vector', 'calm', 'turbulence', 'gust', 'run', 'interval'],
    headings: [key, ...GROUP],
    rows: figures.map((one) => [String(one.of), ...groupCells(one)]),
  };
}
