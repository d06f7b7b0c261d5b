import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PDFDocument } from 'pdf-lib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { explainPage } from '../../src/core/make/index.ts';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { exampleInstrument, plannedHead } from '../support/plannedHead.ts';
import { ownFolder } from '../support/runCli.ts';

let browser: Browser;
let own: ReturnType<typeof ownFolder>;
beforeAll(async () => {
  browser = await startBrowser();
  own = ownFolder();
});
afterAll(async () => {
  await browser.close();
  own.end();
});

/** The page of an example as a file on a disk, without any network. */
async function opened(example: string, options: object = {}) {
  const instrument = exampleInstrument(example);
  const path = join(own.path, `${example}.html`);
  writeFileSync(path, explainPage({ instrument, head: plannedHead(instrument) }));
  return openPage(browser, pathToFileURL(path).href, { offline: true, ...options });
}

/** Sheets that the page prints. */
async function sheets(page: Awaited<ReturnType<typeof opened>>['page']): Promise<number> {
  return (await PDFDocument.load(await page.pdf({ preferCSSPageSize: true }))).getPageCount();
}

describe('the page that a maker publishes', () => {
  it('is turned by keys alone, and told three ways, without a complaint', async () => {
    const { page, complaints } = await opened('jetty');
    const position = page.locator('#position');
    expect(await position.textContent()).toBe('15');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.id')).toBe('turn');
    await page.keyboard.press('PageUp');
    expect([await position.textContent(), await page.locator('#word').textContent()]).toEqual([
      '16',
      '11000',
    ]);
    await page.getByRole('radio', { name: 'For a child' }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('article:visible').getAttribute('id')).toBe('curious');
    await page.keyboard.press('ArrowRight');
    await page.getByText('q = 360° / N').waitFor();
    expect(complaints).toEqual([]);
  });

  it('turns under a hand', async () => {
    const { page } = await opened('jetty');
    const box = (await page.locator('#stage').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y - 100);
    await page.mouse.down();
    await page.mouse.move(x + 100, y, { steps: 8 });
    await page.mouse.up();
    // A quarter turn clockwise takes 90° off the disc angle: eight positions of 11.25°.
    expect(await page.locator('#position').textContent()).toBe('7');
  });

  it.each([
    ['jetty', 1280, 'light'],
    ['tricolour', 360, 'dark'],
    ['dome', 360, 'light'],
    ['sluice', 1280, 'dark'],
  ] as const)('reads well for everyone: %s at %i pixels, %s', async (example, width, colorScheme) => {
    const options = { viewport: { width, height: 800 }, colorScheme, bypassCSP: true };
    const { page, complaints } = await opened(example, options);
    const tellings = ['For a child', 'For the curious', 'For an engineer'];
    for (const telling of example === 'jetty' ? tellings : tellings.slice(2)) {
      await page.getByRole('radio', { name: telling }).check();
      expect(await axeFindings(page)).toEqual([]);
    }
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    expect(await sheets(page)).toBe(1);
    expect(complaints).toEqual([]);
  });

  it('prints as one sheet for the wall, or whole', async () => {
    const { page } = await opened('jetty');
    expect(await sheets(page)).toBe(1);
    await page.evaluate('window.print = () => {}');
    await page.getByRole('button', { name: 'Print the whole page' }).click();
    expect(await sheets(page)).toBeGreaterThan(1);
    await page.getByRole('button', { name: 'Print the poster' }).click();
    expect(await sheets(page)).toBe(1);
  });
});
