import type { Instrument } from '../../instrument/index.ts';
import { costClasses, type CostClass, type Figures, type Finding, type Principle } from '../principle.ts';
import type { Situation } from '../situation.ts';
import { findingsOf } from './findings.ts';

/** How a principle serves a need, from best to worst. */
export const SERVICE = ['serves', 'with-care', 'does-not-serve'] as const;
/** One of those. */
export type Service = (typeof SERVICE)[number];

/** A principle held against a need. */
export interface WeighedPrinciple {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly isDisc: boolean;
  readonly verdict: Service;
  readonly findings: readonly Finding[];
  readonly figures: Omit<Figures, 'more'>;
  readonly parts: readonly string[];
  readonly costClass: CostClass;
  /** Top of its class. [EUR] */
  readonly upToEur: number;
  /** Until it reads, parts at hand. [h] */
  readonly workHours: number;
}

function serviceOf(findings: readonly Finding[]): Service {
  const costs = new Set(findings.filter(({ isGood }) => !isGood).map((finding) => finding.costs));
  if (costs.has('use')) return 'does-not-serve';
  return costs.has('care') ? 'with-care' : 'serves';
}

/** One principle with its figures, findings and verdict. */
export function judged(principle: Principle, situation: Situation): WeighedPrinciple {
  const { name, title, about, isDisc, parts, costClass, workHours } = principle;
  const all = principle.figures(situation);
  const findings = findingsOf(situation.instrument, principle, all);
  const { more: _, ...figures } = all;
  const { upToEur } = costClasses[costClass];
  const verdict = serviceOf(findings);
  return { name, title, about, isDisc, verdict, findings, figures, parts, costClass, upToEur, workHours };
}

/** How many findings rule it out, for the order of those that do not serve. */
const against = ({ findings }: WeighedPrinciple): number =>
  findings.filter(({ isGood, costs }) => !isGood && costs === 'use').length;

/** Best first: verdict, fewer reasons against, less work, less cost, smaller error. */
export function byService(a: WeighedPrinciple, b: WeighedPrinciple): number {
  return (
    SERVICE.indexOf(a.verdict) - SERVICE.indexOf(b.verdict) ||
    against(a) - against(b) ||
    a.workHours - b.workHours ||
    a.upToEur - b.upToEur ||
    a.figures.largestErrorDeg - b.figures.largestErrorDeg
  );
}

/** What the file asks for, in one sentence. */
export function needText({ need, sensing }: Instrument): string {
  const range =
    need.turnRangeDeg >= 360 ? 'a shaft that turns freely' : `a shaft that turns ${need.turnRangeDeg}°`;
  const power = need.mustSurvivePowerLoss
    ? 'known at once after a power cut'
    : 'not needed at once after a power cut';
  return `${range}, turned by ${sensing.turnedBy}; ${need.positions} positions within ${need.accuracyDeg}°, up to ${need.turnRateDegPerS}°/s; ${power}`;
}
