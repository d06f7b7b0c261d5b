import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, keeping, openPage, plainFiles, startBrowser } from '../support/browser.ts';
import { textOf } from '../support/sourceFiles.ts';

let browser: Browser;
let files: Awaited<ReturnType<typeof plainFiles>>;
beforeAll(async () => {
  [browser, files] = await Promise.all([startBrowser(), plainFiles()]);
});
afterAll(async () => {
  await browser.close();
  await files.end();
});

/** What tells that a page has come to rest. */
const pages = {
  start: 'What do you have?',
  file: 'The file reads well, and the design can be made.',
  disc: /tracks fit this disc/,
  head: 'Counts of every channel, unrolled',
  prove: 'worst item',
} as const;

/** The workbench on a page with the jetty vane, or another example, in it. */
async function seen(
  name: string,
  { width = 1280, colorScheme = 'light' as 'light' | 'dark', example = 'jetty' } = {},
) {
  const opened = await openPage(browser, 'about:blank', { viewport: { width, height: 900 }, colorScheme });
  const text = textOf(`examples/${example}/instrument.yaml`);
  await opened.page.addInitScript({ content: keeping(text) });
  await opened.page.goto(`${files.url}?builds=100#/${name}`);
  return opened;
}

describe('the design pages can be read by everyone', () => {
  // Each look once and each width once: the rules that a page can break are those of its look or of its width.
  const looks = [
    { colorScheme: 'light', width: 1280 },
    { colorScheme: 'dark', width: 360 },
  ] as const;
  it.each(looks)('in the $colorScheme look at $width pixels', async (look) => {
    const { page, complaints } = await seen('start', look);
    for (const [name, rests] of Object.entries(pages)) {
      await page.evaluate(`location.hash = '#/${name}'`);
      await page.getByText(rests).first().waitFor();
      for (const details of await page.locator('main details').all()) {
        await details.evaluate((element) => element.setAttribute('open', ''));
      }
      expect(await axeFindings(page), name).toEqual([]);
      const wide = await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
      expect(wide, `${name} is wider than its window`).toBeLessThanOrEqual(0);
    }
    expect(complaints).toEqual([]);
  });
});

describe('every example', () => {
  it.each(['dome', 'sluice', 'tricolour'])('is laid out, placed and proved: %s', async (example) => {
    const { page, complaints } = await seen('disc', { example });
    await page.getByText(/tracks? fit this disc/).waitFor();
    await page.getByRole('slider', { name: 'The disc on its shaft' }).press('PageUp');
    await page.getByRole('navigation').getByText('Head').click();
    await page.getByText('Counts of every channel, unrolled').waitFor();
    await page.getByRole('navigation').getByText('Prove').click();
    await page.getByText(/this design will (not )?read right/).waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('the parts in space', () => {
  it('are named with their sizes, and drawn where the browser can', async () => {
    const { page } = await seen('disc');
    await page.getByRole('button', { name: 'Show the disc and every printed part in 3-D' }).click();
    await page.getByText('Parts and their sizes').click();
    await page.getByRole('rowheader', { name: 'disc', exact: true }).waitFor();
    expect(await page.locator('.solids tbody tr').count()).toBeGreaterThan(4);
    expect(await page.locator('.solids tbody tr').first().textContent()).toContain('90 × 90 × 2');
  });
});
