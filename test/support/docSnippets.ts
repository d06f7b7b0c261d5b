import { blocksOf } from './docBlocks.ts';

/** A snippet of a page with the lines that it says it prints. */
export interface ShownSnippet {
  readonly code: string;
  /** What stands behind `// →`, in order. */
  readonly lines: readonly string[];
  /** First line that is no import, to tell snippets apart. */
  readonly name: string;
}

/** The `js` blocks of a page. */
export function shownSnippets(page: string): ShownSnippet[] {
  return blocksOf(page)
    .filter(({ language }) => language === 'js')
    .map(({ text }) => ({
      code: text,
      lines: [...text.matchAll(/^\s*\/\/ → ?(.*)$/gm)].map(([, line]) => line!),
      name: text.split('\n').find((line) => /^(const|try|for|console)/.test(line)) ?? text,
    }));
}
