import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIST, shownPages, testShownPages } from '../support/shownPages.ts';
import { textOf } from '../support/sourceFiles.ts';

describe('the list of questions', () => {
  it('names every page by its question', () => {
    const pages = shownPages.filter((page) => page.startsWith('docs/how-to/'));
    const links = pages.map((page) => `[${textOf(page).split('\n')[0]!.slice(2)}](${basename(page)})`);
    expect(links.filter((link) => !textOf(LIST).includes(link))).toEqual([]);
  });
});

// Pages side by side show the same commands, so each file of tests takes a run of them.
testShownPages(shownPages.slice(0, 14));
