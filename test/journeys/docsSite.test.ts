import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { brokenLinks } from '../../docs/site/brokenLinks.mjs';
import { buildSite } from '../../docs/site/buildSite.mjs';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { pagesIn } from '../support/docBlocks.ts';

const folder = mkdtempSync(join(tmpdir(), 'vanewright-site-'));
let browser: Browser;
beforeAll(async () => {
  await buildSite(folder);
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const urlOf = (page: string): string => pathToFileURL(join(folder, page)).href;

describe('the docs as pages', () => {
  it('have a page for every Markdown file, with its own title', () => {
    const titles = pagesIn('docs').map((path) => {
      const html = readFileSync(join(folder, path.replace(/^docs\//, '').replace(/md$/, 'html')), 'utf8');
      return /<title>(.+) · vanewright<\/title>/.exec(html)?.[1];
    });
    expect(titles.filter((title) => !title)).toEqual([]);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('lead nowhere but to pages and headings that are there, and fetch nothing from elsewhere', () => {
    // The pages of the library are made by `npm run docs`, which checks them in the same way.
    const isOfLibrary = (line: string): boolean => /: no page (\.\/|(\.\.\/)+)api\/index\.html$/.test(line);
    expect(brokenLinks(folder).filter((line) => !isOfLibrary(line))).toEqual([]);
  });

  it('would not pass with a broken link, a missing heading or a picture from elsewhere', () => {
    const other = join(folder, 'planted');
    mkdirSync(other);
    const page = '<p id="here"><a href="gone.html">a</a><a href="#here">b</a><a href="#gone">c</a>';
    writeFileSync(join(other, 'a.html'), `${page}<img alt="" src="https://host.example/x.svg"></p>`);
    expect(brokenLinks(other)).toEqual([
      'a.html: no page gone.html',
      'a.html: no heading #gone',
      'a.html: fetches https://host.example/x.svg',
    ]);
    rmSync(other, { recursive: true });
  });

  it.each(['index.html', 'how-to/30-north.html', 'reference/commands.html', 'line-format.html'])(
    'read well on a telephone, in light and in dark: %s',
    async (name) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        const { page, complaints } = await openPage(browser, urlOf(name), {
          colorScheme,
          viewport: { width: 360, height: 740 },
        });
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
        expect(complaints).toEqual([]);
        expect(await axeFindings(page)).toEqual([]);
        await page.context().close();
      }
    },
  );

  it('can be walked by keyboard: first to the text, then on', async () => {
    const { page } = await openPage(browser, urlOf('index.html'));
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.id')).toBe('text');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForURL(/tutorial\.html$/);
    await page.context().close();
  });
});
