import type { ComparedDesigns } from '../app/api.ts';
import { showDegrees, showNumber } from '../core/units/index.ts';

/** What `prove --against` prints: both designs in the same builds, and whether they differ beyond luck. */
export function compareText({ first, second, comparison }: ComparedDesigns): string {
  const { yieldDifference, onlyFirstGood, onlySecondGood } = comparison;
  const percent = (share: number): string => showNumber(100 * share, 1);
  const line = (name: string, { yield: good, maxErrorDeg }: typeof comparison.first): string =>
    `  ${name}: ${percent(good.value)} % meet their need (${percent(good.low)} to ${percent(good.high)}), ` +
    `95 % within ${showDegrees(maxErrorDeg.p95)}`;
  const { builds, seed } = comparison.first;
  const [a, b] = [first.instrument.name, second.instrument.name];
  const differs = yieldDifference.low > 0 || yieldDifference.high < 0;
  const better = yieldDifference.value > 0 ? a : b;
  return [
    `${builds} virtual builds of each, drawn alike, seed ${seed}`,
    line(a, comparison.first),
    line(b, comparison.second),
    '',
    `Only ${a} is good in ${onlyFirstGood} builds, only ${b} in ${onlySecondGood}.`,
    differs
      ? `${better} is better by ${percent(Math.abs(yieldDifference.value))} builds in 100 (${percent(yieldDifference.low)} to ${percent(yieldDifference.high)}).`
      : `They do not differ beyond luck: ${percent(yieldDifference.low)} to ${percent(yieldDifference.high)} builds in 100.`,
  ].join('\n');
}
