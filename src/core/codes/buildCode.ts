import { VanewrightError, throwIfAny, type Problem } from '../error/index.ts';
import { codeTable, type CodeTable } from './codeTable.ts';
import { families, familyNames } from './families/families.ts';
import type { CodeFamily, CodeOptions } from './family.ts';
import { POSITIONS_RANGE } from './model.ts';
import { DEFAULT_SEARCH, type SearchLimits } from './search/limits.ts';

/** The family of a name. @throws `codes/unknown-family` */
function familyOf(name: string): CodeFamily {
  const family = families.find((candidate) => candidate.name === name);
  if (family) return family;
  throw new VanewrightError({
    code: 'codes/unknown-family',
    what: 'There is no code of that name.',
    where: 'disc.code',
    got: name,
    allowed: familyNames.join(', '),
    fix: `Set disc.code to ${familyNames[0]}.`,
  });
}

/** Options given that the family does not look at. */
function strayOptions({ name, options: known }: CodeFamily, options: CodeOptions): Problem[] {
  const given = (Object.keys(options) as (keyof CodeOptions)[]).filter(
    (option) => options[option] !== undefined,
  );
  return given
    .filter((option) => !known.includes(option))
    .map((option) => ({
      code: 'codes/option-not-for-this-code',
      what: 'This code does not have that option.',
      where: `disc.codeOptions.${option}`,
      got: String(options[option]),
      allowed: known.length === 0 ? `no options for ${name}` : `${known.join(', ')} for ${name}`,
      fix: `Remove disc.codeOptions.${option}.`,
    }));
}

/** Refuses a count outside what any disc can have. */
function countProblem(positions: number): Problem | null {
  const { least, most } = POSITIONS_RANGE;
  if (Number.isInteger(positions) && positions >= least && positions <= most) return null;
  const nearest = positions > most ? most : positions < least ? least : 32;
  return {
    code: 'codes/count-out-of-range',
    what: 'A disc cannot have that many positions.',
    where: 'need.positions',
    got: String(positions),
    allowed: `a whole number from ${least} to ${most}`,
    fix: `Set need.positions to ${nearest}.`,
  };
}

/**
 * Why a code cannot be made, without making it: cheap for every family.
 *
 * @param positions - N; any number, told as a problem where it is not whole or out of range. [-]
 * @returns Every problem found; empty when `buildCode` may try. A search may still fail.
 * @throws `codes/unknown-family`
 */
export function codeProblems(name: string, positions: number, options: CodeOptions = {}): Problem[] {
  const family = familyOf(name);
  const problems = strayOptions(family, options);
  const outOfRange = countProblem(positions);
  if (outOfRange) return [...problems, outOfRange];
  const refusal = family.refusal(positions, options);
  if (refusal) problems.push({ where: 'need.positions', got: `${positions} positions`, ...refusal });
  return problems;
}

/**
 * The code table of a family.
 *
 * @param name - One of `familyNames`.
 * @param positions - N. [-], whole, 2..4096
 * @param options - What else the maker asks of the code; each family names those it has.
 * @param search - How far a family that searches may go; the same limits give the same code.
 * @throws `codes/unknown-family`, `codes/count-out-of-range`, `codes/option-not-for-this-code`, the family's own
 *   refusal, or `codes/search-ran-out`, `codes/no-such-code`, `codes/search-cancelled` from its search.
 */
export function buildCode(
  name: string,
  positions: number,
  options: CodeOptions = {},
  search: SearchLimits = DEFAULT_SEARCH,
): CodeTable {
  throwIfAny(codeProblems(name, positions, options));
  return codeTable(name, positions, familyOf(name).build(positions, options, search));
}
