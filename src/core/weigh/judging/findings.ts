import type { Instrument } from '../../instrument/index.ts';
import { showDegrees, showNumber, showSignificant } from '../../units/index.ts';
import { costClasses, type Figures, type Finding, type Principle } from '../principle.ts';
import { powerFindings } from './powerFindings.ts';

/** Share of the time that wind may stand in a gap and hardly be missed. Own choice. [-] */
const RARE = 0.01;

const percent = (share: number): string => `${showSignificant(100 * share, 2)} %`;

/** Can it turn as far as asked, and be mounted at all? */
function reachFindings({ sensing, need }: Instrument, principle: Principle, figures: Figures): Finding[] {
  const { travelDeg, deadShare } = figures;
  const found: Finding[] = [];
  if (principle.needsShaftEnd) {
    found.push({
      isGood: sensing.shaftEnd === 'free',
      costs: 'use',
      text:
        sensing.shaftEnd === 'free'
          ? 'It sits on the free end of the shaft.'
          : 'It needs a free end of the shaft, and there is none.',
      change: 'a free end of the shaft (sensing.shaftEnd: free)',
    });
  }
  if (travelDeg !== null) {
    // A shaft with a range of a whole turn goes round and round; no finite travel is enough for that.
    const isEnough = need.turnRangeDeg < 360 && travelDeg >= need.turnRangeDeg;
    found.push({
      isGood: isEnough,
      costs: 'use',
      text: isEnough
        ? `Its travel of ${showDegrees(travelDeg)} covers the ${showDegrees(need.turnRangeDeg)} that are turned.`
        : `It stops after ${showDegrees(travelDeg)}${deadShare > 0 ? `, and ${percent(deadShare)} of the turn is dead` : ''}; the shaft turns ${need.turnRangeDeg >= 360 ? 'round and round' : showDegrees(need.turnRangeDeg)}.`,
      change: `a shaft that turns ${showDegrees(Math.min(359, travelDeg))} at most (need.turnRangeDeg)`,
    });
  }
  return found;
}

/** What stands in the gap. */
function gapFindings(
  { need, sensing }: Instrument,
  { gap, deadShare, travelDeg, errors }: Figures,
): Finding[] {
  if (travelDeg !== null || deadShare === 0) return [];
  const lost = errors.at(-1)!.deg;
  const width = 360 * deadShare;
  const how = gap
    ? `the wind stands in it ${percent(gap.atNorth)} of the time with the gap on north, ${percent(gap.bestPlaced)} with the gap at ${showDegrees(gap.bestAtDeg)}`
    : `${percent(deadShare)} of the turn`;
  const isRare = gap !== null && gap.bestPlaced <= RARE;
  return [
    {
      isGood: isRare,
      costs: lost <= need.accuracyDeg && !sensing.mustShowFaults ? 'care' : 'use',
      text: `Nothing is read over ${showDegrees(Number(width.toFixed(1)))}: ${how}. Without a resistor to pull it down it reads anything there.`,
      change: gap
        ? `a heading where the wind stands less than ${percent(RARE)} of the time, for the gap`
        : `need.turnRangeDeg of ${showNumber(360 - width, 1)} or less`,
    },
  ];
}

/** Is it fine and true enough? */
function errorFindings({ need }: Instrument, { stepDeg, largestErrorDeg, errors }: Figures): Finding[] {
  const asked = 360 / need.positions;
  const worst = errors.reduce((a, b) => (b.deg > a.deg ? b : a));
  const shown = showDegrees(Number(largestErrorDeg.toFixed(1)));
  return [
    {
      isGood: largestErrorDeg <= need.accuracyDeg,
      costs: 'use',
      text: `Its largest error is ${shown}, most of it ${worst.title}; you accept ${showDegrees(need.accuracyDeg)}.`,
      change: `need.accuracyDeg of ${showNumber(Math.ceil(100 * largestErrorDeg) / 100, 2)} or more`,
    },
    {
      isGood: stepDeg <= asked * (1 + 1e-9),
      costs: 'use',
      text: `It tells steps of ${showDegrees(Number(stepDeg.toFixed(2)))}; you ask for ${showDegrees(Number(asked.toFixed(2)))}.`,
      // A wheel or a disc is made for the positions asked: that is no limit of its kind.
      change:
        stepDeg > 0.99 * asked && stepDeg < 1.01 * asked
          ? ''
          : `need.positions of ${Math.floor(360 / stepDeg + 1e-9)} or fewer`,
    },
  ];
}

/** Does it move, last and follow? */
function motionFindings({ need, sensing }: Instrument, figures: Figures): Finding[] {
  const { frictionNmm, lifeYears, limitDegPerS } = figures;
  const found: Finding[] = [
    {
      isGood: frictionNmm <= sensing.startTorqueNmm,
      costs: 'use',
      text:
        frictionNmm === 0
          ? 'It touches nothing and adds no friction.'
          : `It takes ${showNumber(frictionNmm, 3)} N mm before the shaft moves; you allow ${showNumber(sensing.startTorqueNmm, 3)} N mm.`,
      change: frictionNmm === 0 ? '' : `sensing.startTorqueNmm of ${showNumber(frictionNmm, 3)} or more`,
    },
  ];
  if (lifeYears !== null) {
    found.push({
      isGood: lifeYears >= sensing.lifeYears,
      costs: 'use',
      text: `It is worn after about ${showSignificant(lifeYears, 2)} years; you ask for ${showNumber(sensing.lifeYears, 1)}.`,
      change: `sensing.lifeYears of ${showSignificant(lifeYears, 2)} or less`,
    });
  }
  if (limitDegPerS !== null) {
    found.push({
      isGood: limitDegPerS >= need.turnRateDegPerS,
      costs: 'use',
      text: `Every step is read up to ${showSignificant(limitDegPerS, 2)}°/s; you ask for ${showNumber(need.turnRateDegPerS, 1)}°/s.`,
      change: `need.turnRateDegPerS of ${showSignificant(limitDegPerS, 2)} or less`,
    });
  }
  return found;
}

/** Can it be read whenever it is asked, and believed? */
function trustFindings({ sensing }: Instrument, { blindShare, showsFaults }: Figures): Finding[] {
  const found: Finding[] = [];
  if (blindShare > 0) {
    found.push({
      isGood: false,
      costs: 'use',
      text: `It is blind in the dark: ${percent(blindShare)} of the time outdoors, and its thresholds move with the sun.`,
      change: 'a lamp that always burns, or a lesson by day',
    });
  }
  if (sensing.mustShowFaults || showsFaults) {
    found.push({
      isGood: showsFaults,
      costs: 'use',
      text: showsFaults
        ? 'A dead lamp, flooding light or a lost magnet shows itself.'
        : 'A fault can pass for a direction.',
      change: showsFaults ? '' : 'sensing.mustShowFaults: false',
    });
  }
  return found;
}

/** Can it be paid and made? */
function meansFindings({ sensing }: Instrument, { costClass, tools }: Principle): Finding[] {
  const { upToEur } = costClasses[costClass];
  const missing = tools.filter((choices) => !choices.some((tool) => sensing.tools.includes(tool)));
  return [
    {
      isGood: upToEur <= sensing.budgetEur,
      costs: 'use',
      text: `Its parts cost up to about ${upToEur} EUR; you give ${showNumber(sensing.budgetEur, 0)} EUR.`,
      change: `sensing.budgetEur of ${upToEur} or more`,
    },
    ...missing.map((choices): Finding => {
      const named = choices.join(' or ').replaceAll('-', ' ');
      return {
        isGood: false,
        costs: 'care',
        text: `It wants one tool more: ${named}, which is not among your tools.`,
        change: `one tool more, owned or borrowed: ${named} (sensing.tools)`,
      };
    }),
  ];
}

/** Everything that speaks for a principle or against it. */
export function findingsOf(instrument: Instrument, principle: Principle, figures: Figures): Finding[] {
  return [
    ...reachFindings(instrument, principle, figures),
    ...gapFindings(instrument, figures),
    ...errorFindings(instrument, figures),
    ...powerFindings(instrument, figures),
    ...motionFindings(instrument, figures),
    ...trustFindings(instrument, figures),
    ...figures.more,
    ...meansFindings(instrument, principle),
  ];
}
