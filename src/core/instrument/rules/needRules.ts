import { codeProblems } from '../../codes/index.ts';
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

/** The code's own refusal of a count, told with the rest of the file. */
function codeRule({ need, disc }: PartialDraft): readonly Finding[] {
  const positions = need ? positionsOf(need) : null;
  if (positions === null || !disc) return [];
  return codeProblems(disc.code, positions, disc.codeOptions).map(({ code, what, where, got, allowed, fix }) => ({
    code,
    fields: [where, 'need.positions', 'need.resolutionDeg', 'disc.code'],
    what,
    got,
    allowed,
    fix,
  }));
}

/** What `need` says, taken together. */
export function needRules(draft: PartialDraft): readonly Finding[] {
  return [...(draft.need ? countRule(draft.need) : []), ...codeRule(draft)];
}
