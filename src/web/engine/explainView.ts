import type { Design } from '../../app/api.ts';
import { explainPage } from '../../core/make/index.ts';

/** The page that tells how a disc works: the same bytes as `how-it-works.html` of the command. */
export function explainView({ instrument, head }: Design): string {
  return explainPage({ instrument, head });
}
