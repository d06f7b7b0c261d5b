import type { MadeView } from '../../engine/makeView.ts';

/** The files last made, as long as the page is open and the design is the same. */
let kept: { readonly text: string; readonly made: MadeView } | null = null;

/** Keeps what was made of a file, so that going to another page and back loses nothing. */
export function keepMade(text: string, made: MadeView): void {
  kept = { text, made };
}

/** What was made of this very file; `null` where that is another. */
export function keptMade(text: string): MadeView | null {
  return kept?.text === text ? kept.made : null;
}
