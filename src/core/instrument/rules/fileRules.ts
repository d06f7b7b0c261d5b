import { asBuiltRules } from './asBuiltRules.ts';
import { discRules } from './discRules.ts';
import type { Finding, PartialDraft } from './finding.ts';
import { headRules } from './headRules.ts';
import { needRules } from './needRules.ts';
import { siteRules } from './siteRules.ts';

/** Everything that fields in range can still get wrong together, as far as it needs no geometry. */
export function fileRules(draft: PartialDraft): readonly Finding[] {
  return [needRules, discRules, headRules, siteRules, asBuiltRules].flatMap((rules) => rules(draft));
}
