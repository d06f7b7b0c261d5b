import { codeProblems, OWN_WORDS } from '../../codes/index.ts';
import { showDegrees } from '../../units/index.ts';
import { positionsFor, positionsOf } from '../resolveInstrument.ts';
import type { Finding, PartialDraft } from './finding.ts';

/** Positions and resolution: one must be given, and they must not contradict each other. */
function countRule({ positions, resolutionDeg }: NonNullable<PartialDraft['need']>): readonly Finding[] {
  if (positions === undefined && resolutionDeg === undefined) {
    return [
      {
        code: 'instrument/no-count',
        fields: ['need', 'need.positions', 'need.resolutionDeg'],
        what: 'The file does not say how finely the disc must tell directions apart.',
        got: 'neither positions nor resolutionDeg',
        allowed: 'need.positions, or need.resolutionDeg in degrees',
        fix: 'Add positions: 32 under need; that is a step of 11.25°.',
      },
    ];
  }
  if (positions === undefined || resolutionDeg === undefined) return [];
  if (360 / positions <= resolutionDeg * (1 + 1e-9)) return [];
  return [
    {
      code: 'instrument/counts-disagree',
      fields: ['need.positions', 'need.resolutionDeg'],
      what: 'The positions are too few for the resolution that is asked as well.',
      got: `${positions} positions, a step of ${showDegrees(360 / positions)}, and resolutionDeg ${resolutionDeg}`,
      allowed: `a step of ${showDegrees(resolutionDeg)} or less: ${positionsFor(resolutionDeg)} positions or more`,
      fix: `Set need.positions to ${positionsFor(resolutionDeg)}, or remove one of the two.`,
    },
  ];
}

/** A code of the maker's own words needs their file, and no other code has one. */
function ownWordsRule({ code, codeFile }: NonNullable<PartialDraft['disc']>): readonly Finding[] {
  if ((code === OWN_WORDS) === (codeFile !== null)) return [];
  const isMissing = code === OWN_WORDS;
  return [
    {
      code: 'instrument/code-file-alone',
      fields: isMissing ? ['disc.code', 'disc.codeFile'] : ['disc.codeFile', 'disc.code'],
      what: isMissing
        ? 'The file with your own words is not named.'
        : 'A file of your own words is named, but not used.',
      got: isMissing ? `code ${OWN_WORDS} without codeFile` : `codeFile ${codeFile} with code ${code}`,
      allowed: `both code: ${OWN_WORDS} and codeFile, or neither`,
      fix: isMissing
        ? 'Add codeFile: code.csv under disc.'
        : `Set disc.code to ${OWN_WORDS}, or remove disc.codeFile.`,
    },
  ];
}

/** The code's own refusal of a count, told with the rest of the file. */
function codeRule({ need, disc }: PartialDraft): readonly Finding[] {
  const positions = need ? positionsOf(need) : null;
  if (positions === null || !disc) return [];
  if (disc.code === OWN_WORDS || disc.codeFile !== null) return ownWordsRule(disc);
  return codeProblems(disc.code, positions, disc.codeOptions).map(
    ({ code, what, where, got, allowed, fix }) => ({
      code,
      fields: [where, 'need.positions', 'need.resolutionDeg', 'disc.code'],
      what,
      got,
      allowed,
      fix,
    }),
  );
}

/** What `need` says, taken together. */
export function needRules(draft: PartialDraft): readonly Finding[] {
  return [...(draft.need ? countRule(draft.need) : []), ...codeRule(draft)];
}
