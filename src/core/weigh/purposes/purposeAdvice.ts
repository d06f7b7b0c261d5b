import { sectorAdvice, type SectorFit } from '../../codes/index.ts';
import { VanewrightError } from '../../error/index.ts';
import { showDegrees, showNumber, type Degrees } from '../../units/index.ts';
import { SWING_S } from '../wait/modelWait.ts';
import { purposeNames, purposes } from './purposes.ts';
import type { Purpose } from './purpose.ts';
import { stepBiasDeg } from './stepBias.ts';

/** What readings for a purpose can tell. */
export interface PurposeAdvice {
  readonly purpose: Purpose;
  readonly stepDeg: Degrees;
  /** What one reading tells: at most half a step off by the steps alone, and that in the root mean square. [deg] */
  readonly oneReading: { readonly largestDeg: Degrees; readonly rmsDeg: Degrees };
  /** What a mean tells; `null` where none is taken. */
  readonly mean: {
    readonly averageS: number;
    /** Swing of the wind that was reckoned with. [deg] */
    readonly swingDeg: Degrees;
    /** Error left by the steps, at most. [deg] */
    readonly stepBiasDeg: Degrees;
    /** Standard error, since a mean of few swings wobbles itself. [deg] */
    readonly standardErrorDeg: Degrees;
  } | null;
  readonly roses: readonly SectorFit[];
  /** Lines for the instrument file. */
  readonly need: { readonly positions: number; readonly accuracyDeg: Degrees };
  /** The same in sentences. */
  readonly says: readonly string[];
}

function purposeNamed(name: string): Purpose {
  const purpose = purposes.find((one) => one.name === name);
  if (purpose) return purpose;
  throw new VanewrightError({
    code: 'weigh/unknown-purpose',
    what: 'There is no purpose of that name.',
    where: '--purpose',
    got: name,
    allowed: purposeNames.join(', '),
    fix: `Name one of them, such as --purpose ${purposeNames[0]!}.`,
  });
}

function meanOf({ averageS, isWind }: Purpose, stepDeg: Degrees, swingDeg: Degrees): PurposeAdvice['mean'] {
  if (averageS === null || !isWind) return null;
  const swings = averageS / SWING_S;
  return {
    averageS,
    swingDeg,
    stepBiasDeg: stepBiasDeg(stepDeg, swingDeg),
    standardErrorDeg: swingDeg / Math.sqrt(swings),
  };
}

const shown = (deg: Degrees): string =>
  deg > 0 && deg < 0.005 ? 'less than 0.01°' : showDegrees(Number(deg.toFixed(2)));

function sentences(advice: Omit<PurposeAdvice, 'says'>): string[] {
  const { purpose, stepDeg, oneReading, mean, roses } = advice;
  const fair = roses.filter(({ isFair }) => isFair).map(({ sectors }) => sectors);
  return [
    `${purpose.positions} positions, steps of ${shown(stepDeg)}, an accuracy of ${shown(purpose.accuracyDeg)}. ${purpose.why}`,
    `One reading is off by ${shown(oneReading.largestDeg)} at most by the steps alone, ${shown(oneReading.rmsDeg)} in the root mean square; making it costs the rest of the accuracy.`,
    mean
      ? `A mean of ${showNumber(mean.averageS / 60, 1)} minutes in a wind that swings by ${shown(mean.swingDeg)} is off by the steps by ${shown(mean.stepBiasDeg)} at most, and wobbles by ${shown(mean.standardErrorDeg)} itself: a finer disc would not tell more.`
      : purpose.isWind
        ? 'Each reading stands for itself; a mean of ten minutes would tell more than any of them.'
        : 'The shaft stands still, so a mean tells no more than one reading.',
    fair.length > 0
      ? `Roses of ${fair.join(', ')} sectors fill fairly.`
      : 'No usual rose fills fairly; share each position among the sectors it overlaps.',
  ];
}

/**
 * From what a direction is for to what an instrument must do, and what its readings and means can tell.
 *
 * @param name - One of `purposeNames`.
 * @param swingDeg - Standard deviation of the wind's direction within ten minutes. [deg]
 * @throws `weigh/unknown-purpose`
 * @source derived: rms of a step is step/√12; a mean of n independent swings wobbles by swing/√n.
 * @check src/core/weigh/purposes/purposeAdvice.test.ts
 */
export function purposeAdvice(name: string, swingDeg: Degrees): PurposeAdvice {
  const purpose = purposeNamed(name);
  const { positions, accuracyDeg } = purpose;
  const stepDeg = 360 / positions;
  const advice = {
    purpose,
    stepDeg,
    oneReading: { largestDeg: stepDeg / 2, rmsDeg: stepDeg / Math.sqrt(12) },
    mean: meanOf(purpose, stepDeg, swingDeg),
    roses: sectorAdvice(positions),
    need: { positions, accuracyDeg },
  };
  return { ...advice, says: sentences(advice) };
}
