import { showDegrees } from '../../units/index.ts';
import type { Finding } from '../principle.ts';
import type { WeighedPrinciple } from './judge.ts';

/** What to do, in one word. */
export type Advice = 'build-a-disc' | 'do-not-build-a-disc' | 'nothing-serves';

/** The verdict on the ten together. */
export interface WeighVerdict {
  readonly advice: Advice;
  /** Name of the principle advised; `null` where none serves. */
  readonly best: string | null;
  readonly headline: string;
  /** Why, and what speaks for the next best. */
  readonly reasons: readonly string[];
  /** What would turn the verdict round. */
  readonly wouldChange: readonly string[];
}

/** Ways of sensing whose change is told. [-] */
const MOST_CHANGES = 4;

/** Of principles that do not serve, those so near that a change or two would let them. [-] */
const NEAR = 2;

const bad = (finding: Finding): boolean => !finding.isGood && finding.costs !== 'nothing';

/** Bad findings of one that falls short, as what would have to be otherwise. */
function toServe({ title, findings }: WeighedPrinciple): string[] {
  const wanted = findings.filter(bad).map(({ change }) => change);
  if (wanted.length === 0 || wanted.length > NEAR) return [];
  return [`A ${title} would serve with ${wanted.join(', and with ')}.`];
}

/** Where the advised one comes to its end. */
function toFail({ title, findings }: WeighedPrinciple): string[] {
  const limits = findings.filter(({ isGood, costs, change }) => isGood && costs === 'use' && change !== '');
  if (limits.length === 0) return [];
  return [`The ${title} serves only with ${limits.map(({ change }) => change).join('; ')}.`];
}

/** Two that serve, side by side. */
function beside(best: WeighedPrinciple, other: WeighedPrinciple): string {
  const figures = ({ figures, workHours, upToEur }: WeighedPrinciple): string =>
    `${showDegrees(Number(figures.largestErrorDeg.toFixed(1)))} of error, about ${workHours} hours of work, parts up to ${upToEur} EUR`;
  return `The ${best.title}: ${figures(best)}. The ${other.title}: ${figures(other)}.`;
}

function disc(
  best: WeighedPrinciple,
  rival: WeighedPrinciple | undefined,
  all: readonly WeighedPrinciple[],
): WeighVerdict {
  const care = best.verdict === 'with-care' ? ', with the care told below' : '';
  const reasons =
    rival && rival.verdict !== 'does-not-serve'
      ? [beside(best, rival)]
      : ['No way of sensing without a disc serves this need.'];
  const near = all.filter(({ isDisc, verdict }) => !isDisc && verdict === 'does-not-serve').flatMap(toServe);
  return {
    advice: 'build-a-disc',
    best: best.name,
    headline: `Build a disc: a ${best.title} serves this need best${care}.`,
    reasons,
    wouldChange: [...near.slice(0, MOST_CHANGES), ...toFail(best)],
  };
}

function noDisc(best: WeighedPrinciple, rival: WeighedPrinciple | undefined): WeighVerdict {
  const serves = rival !== undefined && rival.verdict !== 'does-not-serve';
  return {
    advice: 'do-not-build-a-disc',
    best: best.name,
    headline: `Do not build a disc: a ${best.title} serves this need with less work.`,
    reasons: serves
      ? [
          beside(best, rival),
          'A disc serves as well. Build it if you want to see how it reads, to mend it with parts from a drawer, or to keep magnets and chips away.',
        ]
      : ['No disc serves this need as it is written; the reasons stand below.'],
    wouldChange: [...toFail(best), ...(serves || !rival ? [] : toServe(rival))],
  };
}

/**
 * What to do, why, and what would change it.
 *
 * @param ranked - All principles, best first. n ≥ 1
 */
export function verdictOn(ranked: readonly WeighedPrinciple[]): WeighVerdict {
  const best = ranked[0]!;
  if (best.verdict === 'does-not-serve') {
    return {
      advice: 'nothing-serves',
      best: null,
      headline: 'None of the ten serves this need as it is written.',
      reasons: [
        `The nearest is a ${best.title}: ${best.findings
          .filter(bad)
          .map(({ text }) => text)
          .join(' ')}`,
      ],
      wouldChange: ranked.flatMap(toServe).slice(0, MOST_CHANGES),
    };
  }
  const rival = ranked.find(({ isDisc }) => isDisc !== best.isDisc);
  return best.isDisc ? disc(best, rival, ranked) : noDisc(best, rival);
}
