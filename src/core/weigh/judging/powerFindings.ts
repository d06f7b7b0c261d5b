import type { Instrument } from '../../instrument/index.ts';
import { showDegrees, showNumber } from '../../units/index.ts';
import type { Figures, Finding } from '../principle.ts';
import type { IndexWait } from '../wait/indexWait.ts';
import { showHours } from './showHours.ts';

const basisWords = {
  model: 'by the wind of the site',
  recorded: 'by the recorded wind',
  driven: 'by driving to it at the fastest turn asked',
} as const satisfies Record<IndexWait['basis'], string>;

/** A wait in a sentence. [h], [deg] */
export function waitText({ meanH, p95H, neverShare, basis, indexDeg, horizonH }: IndexWait): string {
  const mean = `${neverShare > 0 ? 'at least ' : ''}${showHours(meanH)} on average`;
  const late =
    p95H === null
      ? `more than 5 in 100 waits are longer than the ${showHours(horizonH)} followed`
      : `19 in 20 are over within ${showHours(p95H)}`;
  const at = basis === 'driven' ? '' : ` at ${showDegrees(indexDeg)}`;
  return `The index${at} is met after ${mean}, ${late}, ${basisWords[basis]}`;
}

function untilIndex(
  { need, sensing }: Instrument,
  { wait, waitAtNorth, unknownHPerYear }: Figures,
): Finding[] {
  if (!wait || unknownHPerYear === null) return [];
  const onNorth =
    waitAtNorth && waitAtNorth.indexDeg !== wait.indexDeg
      ? ` With the index on north it would be ${showHours(waitAtNorth.meanH)}.`
      : '';
  return [
    {
      isGood: false,
      costs: need.mustSurvivePowerLoss ? 'use' : 'care',
      text: `After a power cut the direction is unknown. ${waitText(wait)}.${onNorth} With ${showNumber(sensing.powerCutsPerYear, 1)} cuts a year that is ${showHours(unknownHPerYear)} a year.`,
      change: 'need.mustSurvivePowerLoss: false',
    },
  ];
}

/** What a power cut does. */
export function powerFindings(instrument: Instrument, figures: Figures): Finding[] {
  const { need, sensing } = instrument;
  if (figures.powerLoss === 'until-index') return untilIndex(instrument, figures);
  if (figures.powerLoss === 'kept') {
    return [
      {
        isGood: true,
        costs: 'nothing',
        text: 'It knows the direction as soon as the power returns.',
        change: '',
      },
    ];
  }
  return [
    {
      isGood: false,
      costs: need.mustSurvivePowerLoss || sensing.powerCutsPerYear > 0 ? 'use' : 'care',
      text: `After a power cut, ${showNumber(sensing.powerCutsPerYear, 1)} a year, every reading is off by the same unknown turn until someone sets it again; a missed count does the same for good.`,
      change: 'power that never fails (sensing.powerCutsPerYear: 0, need.mustSurvivePowerLoss: false)',
    },
  ];
}
