import { VanewrightError } from '../../error/index.ts';
import { buildCode, codeProblems } from '../buildCode.ts';
import type { CodeTable } from '../codeTable.ts';
import { families } from '../families/families.ts';
import type { CodeFamily, CodeOptions } from '../family.ts';
import type { SearchLimits } from '../search/limits.ts';
import { VERDICTS, type CodeNeed, type Reason, type Verdict } from './need.ts';
import { weighCode, type CodeMeasures } from './weighCode.ts';

/** A code with its place in the list. */
export interface RankedCode {
  /** For `disc.code` and `disc.codeOptions`. */
  readonly name: string;
  readonly options: CodeOptions;
  /** Name in a sentence, with what sets it apart from its like. */
  readonly title: string;
  readonly verdict: Verdict;
  /** What tells most first. */
  readonly reasons: readonly Reason[];
  /** `null` where the code cannot be made for that count. */
  readonly measures: CodeMeasures | null;
  readonly table: CodeTable | null;
}

/** A quarter of a second of search for each code that needs one. */
export const RANKING_SEARCH: SearchLimits = { seed: 1, mostSteps: 1_000_000 };

/** The ways to ask a family that are worth comparing. */
function variants(
  family: CodeFamily,
  need: CodeNeed,
): { readonly options: CodeOptions; readonly suffix: string }[] {
  const { options } = family;
  if (options.includes('headPlacement')) {
    return [
      { options: { headPlacement: 'even' }, suffix: ', sensors all round' },
      { options: { headPlacement: 'half-turn' }, suffix: ', sensors within half a turn' },
    ];
  }
  if (options.includes('clockTrack')) {
    return [
      { options: { clockTrack: true }, suffix: ' with clock track' },
      { options: { clockTrack: false }, suffix: ' without clock track' },
    ];
  }
  if (options.includes('indexTrack')) {
    return [
      { options: { indexTrack: true }, suffix: ' with index' },
      { options: {}, suffix: ' without index' },
    ];
  }
  return [{ options: options.includes('seam') && !need.turnsFully ? { seam: 'open' } : {}, suffix: '' }];
}

/** The table, or why there is none. */
function attempt(
  name: string,
  options: CodeOptions,
  need: CodeNeed,
  search: SearchLimits,
): CodeTable | Reason[] {
  const asReasons = (problems: readonly { what: string; allowed: string }[]): Reason[] =>
    problems.map(({ what, allowed }) => ({ isGood: false, text: `${what} Possible: ${allowed}.` }));
  const problems = codeProblems(name, need.positions, options);
  if (problems.length > 0) return asReasons(problems);
  try {
    return buildCode(name, need.positions, options, search);
  } catch (error) {
    if (!(error instanceof VanewrightError) || search.signal?.aborted) throw error;
    return asReasons(error.problems);
  }
}

/** Best first: verdict, sensors, tracks, faults recognised, larger marks. */
function compare(a: RankedCode, b: RankedCode): number {
  const byVerdict = VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict);
  if (byVerdict !== 0 || !a.measures || !b.measures) return byVerdict;
  const seen = ({ lampOffSeen, floodedSeen }: CodeMeasures): number =>
    Number(lampOffSeen) + Number(floodedSeen);
  return (
    a.measures.channels - b.measures.channels ||
    a.measures.tracks - b.measures.tracks ||
    seen(b.measures) - seen(a.measures) ||
    b.measures.markMargin - a.measures.markMargin
  );
}

/**
 * Every code for a need, the best first, each with its reasons; what cannot be made comes last and says why.
 *
 * Among codes that fit, fewer sensors come first, then fewer tracks, then faults that show themselves, then larger marks.
 * A maker may choose any other: the list advises and does not decide.
 *
 * @param search - How far each searched code may go; the same limits give the same list.
 * @throws `codes/count-out-of-range` when no code could have that many positions; `codes/search-cancelled`.
 * @check src/core/codes/ranking/rankCodes.test.ts
 */
export function rankCodes(need: CodeNeed, search: SearchLimits = RANKING_SEARCH): RankedCode[] {
  const outOfRange = codeProblems('natural-binary', need.positions)[0];
  if (outOfRange) throw new VanewrightError(outOfRange);
  const ranked = families.flatMap((family: CodeFamily) =>
    variants(family, need).map(({ options, suffix }): RankedCode => {
      const about = { name: family.name, options, title: family.title + suffix };
      const made = attempt(family.name, options, need, search);
      if (Array.isArray(made))
        return { ...about, verdict: 'cannot', reasons: made, measures: null, table: null };
      return { ...about, ...weighCode(made, need), table: made };
    }),
  );
  return ranked.sort(compare);
}
