import type { Finding, PartialDraft } from './finding.ts';

/** What `site` says, taken together: a wind that comes from nowhere is none. */
export function siteRules({ site }: PartialDraft): readonly Finding[] {
  const shares = site?.wind.sectorShares ?? null;
  if (shares === null || shares.some((share) => share > 0)) return [];
  return [
    {
      code: 'instrument/wind-from-nowhere',
      fields: ['site.wind.sectorShares'],
      what: 'The wind would come from no sector at all.',
      got: `${shares.length} shares of 0`,
      allowed: 'a share above 0 for at least one sector',
      fix: 'Write how often it comes from each, or leave sectorShares out for all directions alike.',
    },
  ];
}
