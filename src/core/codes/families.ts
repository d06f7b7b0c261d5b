import { VanewrightError } from '../error/index.ts';
import { codeTable, type CodeTable } from './codeTable.ts';
import type { CodeFamily } from './family.ts';
import { naturalBinary } from './naturalBinary.ts';
import { reflectedGray } from './reflectedGray.ts';

/** Every code a disc can carry, in the order a maker should read them. */
export const families = [reflectedGray, naturalBinary] as const satisfies readonly CodeFamily[];

/** Names that `disc.code` accepts. */
export const familyNames = families.map((family) => family.name);

/** Fewest and most positions a disc can have: below 2 nothing is told apart, above 4096 no hand-made disc reads. */
export const POSITIONS_RANGE = { least: 2, most: 4096 } as const;

/**
 * The code table of a family.
 *
 * @param name - One of `familyNames`.
 * @param positions - N. [-], whole, 2..4096
 * @throws `codes/unknown-family`, `codes/count-out-of-range`, or the family's own refusal.
 */
export function buildCode(name: string, positions: number): CodeTable {
  const family = families.find((candidate) => candidate.name === name);
  if (!family) {
    throw new VanewrightError({
      code: 'codes/unknown-family',
      what: 'There is no code of that name.',
      where: 'disc.code',
      got: name,
      allowed: familyNames.join(', '),
      fix: `Set disc.code to ${familyNames[0]}.`,
    });
  }
  const { least, most } = POSITIONS_RANGE;
  if (!Number.isInteger(positions) || positions < least || positions > most) {
    throw new VanewrightError({
      code: 'codes/count-out-of-range',
      what: 'A disc cannot have that many positions.',
      where: 'need.positions',
      got: String(positions),
      allowed: `a whole number from ${least} to ${most}`,
      fix: `Set need.positions to ${positions > most ? most : positions < least ? least : 32}.`,
    });
  }
  const refusal = family.refusal(positions);
  if (refusal)
    throw new VanewrightError({ ...refusal, where: 'need.positions', got: `${positions} positions` });
  return codeTable(family.name, positions, family.build(positions));
}
