import type { Problem } from '../../error/index.ts';
import { showNumber } from '../../units/index.ts';
import type { CircuitSpec, HeadSpec } from '../headSpec.ts';
import type { Rate } from '../headPlan.ts';

/** A number of the head with the range physics leaves it. */
interface Ranged {
  readonly where: string;
  readonly value: number;
  readonly unit: string;
  /** Must lie above this, or from it on when `reachable`. */
  readonly above: number;
  readonly reachable: boolean;
  readonly works: number;
}

/** Values no part can have: not numbers, below zero, or zero where something must be. */
export function impossibleValues(spec: HeadSpec, circuit: CircuitSpec, rate: Rate): Problem[] {
  const ranged = [...detectorValues(spec), ...apertureValues(spec), ...circuitValues(spec, circuit, rate)];
  return ranged.filter(isImpossible).map(({ where, value, unit, above, reachable, works }) => ({
    code: 'head/impossible-value',
    what: 'No part can have this value.',
    where,
    got: `${value} ${unit}`,
    allowed: `${reachable ? 'a number from' : 'a number above'} ${above} ${unit}`,
    fix: `Set ${where} to ${showNumber(works, 3)} ${unit} or to what you measured.`,
  }));
}

function isImpossible({ value, above, reachable }: Ranged): boolean {
  return !Number.isFinite(value) || value < above || (value === above && !reachable);
}

function detectorValues({ detector }: HeadSpec): Ranged[] {
  const common = [
    ranged('head.detector.riseMs', detector.riseMs, 'ms', 20),
    ranged('head.detector.fallMs', detector.fallMs, 'ms', 30),
    orZero('head.detector.spread', detector.spread, '(share)', 0.25),
  ];
  if (detector.kind === 'photoresistor') {
    return [
      ranged('head.detector.litOhm', detector.litOhm, 'ohm', 2_000),
      ranged('head.detector.darkOhm', detector.darkOhm, 'ohm', 200_000),
      ranged('head.detector.gamma', detector.gamma, '(slope)', 0.7),
      ...common,
    ];
  }
  if (detector.kind === 'colour-sensor') {
    return [
      ...detector.marksRgbCounts.flatMap((rgb, level) =>
        rgb.map((counts, colour) =>
          orZero(`head.detector.marksRgbCounts.${level}.${colour}`, counts, 'counts', 200),
        ),
      ),
      ranged('head.detector.rejectRatio', detector.rejectRatio, '(ratio)', 0.5),
      orZero('head.detector.leastSumCounts', detector.leastSumCounts, 'counts', 60),
      ...common,
    ];
  }
  return [
    ranged('head.detector.litMa', detector.litMa, 'mA', 0.5),
    orZero('head.detector.darkMa', detector.darkMa, 'mA', 0.01),
    orZero('head.detector.saturationV', detector.saturationV, 'V', 0.4),
    ...common,
  ];
}

function apertureValues({ aperture }: HeadSpec): Ranged[] {
  switch (aperture.shape) {
    case 'slit':
      return [
        ranged('head.aperture.widthMm', aperture.widthMm, 'mm', 1),
        ranged('head.aperture.lengthMm', aperture.lengthMm, 'mm', 3),
      ];
    case 'round':
      return [ranged('head.aperture.diameterMm', aperture.diameterMm, 'mm', 2)];
    case 'gaussian':
      return [ranged('head.aperture.radiusMm', aperture.radiusMm, 'mm', 1)];
  }
}

function circuitValues(spec: HeadSpec, circuit: CircuitSpec, rate: Rate): Ranged[] {
  return [
    orZero('head.tangentialSdMm', spec.tangentialSdMm, 'mm', 0.1),
    orZero('head.radialSdMm', spec.radialSdMm, 'mm', 0.1),
    ranged('circuit.resistorOhm', circuit.resistorOhm ?? 1, 'ohm', 20_000),
    orZero('circuit.resistorTolerancePercent', circuit.resistorTolerancePercent, '%', 5),
    orZero('circuit.hysteresisCounts', circuit.hysteresisCounts ?? 0, 'counts', 31),
    orZero('circuit.noiseCounts', circuit.noiseCounts, 'counts', 1),
    ...ladderValues(circuit),
    ...climateValues(spec),
    ranged('controller.baud', rate.baud, 'bit/s', 9_600),
  ];
}

function ladderValues({ ladder }: CircuitSpec): Ranged[] {
  if (!ladder) return [];
  return [
    ranged('circuit.ladder.smallestOhm', ladder.smallestOhm, 'ohm', 10_000),
    orZero('circuit.ladder.tolerancePercent', ladder.tolerancePercent, '%', 1),
    orZero('circuit.ladder.ppmPerK', ladder.ppmPerK, 'ppm/K', 100),
  ];
}

/** Nothing is colder than this. @source SI: 0 K [°C] */
const ABSOLUTE_ZERO_C = -273.15;

function climateValues({ climate }: HeadSpec): Ranged[] {
  if (!climate) return [];
  const { coldestC, hottestC, monthsBetweenSettings } = climate;
  const reachable = false;
  return [
    {
      where: 'head.climate.coldestC',
      value: coldestC,
      unit: 'degC',
      above: ABSOLUTE_ZERO_C,
      reachable,
      works: -10,
    },
    {
      where: 'head.climate.hottestC',
      value: hottestC,
      unit: 'degC',
      above: ABSOLUTE_ZERO_C,
      reachable,
      works: 40,
    },
    orZero('head.climate.monthsBetweenSettings', monthsBetweenSettings, '(months)', 12),
  ];
}

function ranged(where: string, value: number, unit: string, works: number): Ranged {
  return { where, value, unit, above: 0, reachable: false, works };
}

function orZero(where: string, value: number, unit: string, works: number): Ranged {
  return { where, value, unit, above: 0, reachable: true, works };
}
