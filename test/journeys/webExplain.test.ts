import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { opened, type Running } from '../support/openCommand.ts';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';

let browser: Browser;
let own: ReturnType<typeof ownFolder>;
let server: Running;
beforeAll(async () => {
  own = ownFolder();
  cpSync(join(ROOT, 'examples/jetty/instrument.yaml'), join(own.path, 'instrument.yaml'));
  browser = await startBrowser();
  server = await opened(join(own.path, 'instrument.yaml'), '--port', '0');
});
afterAll(async () => {
  await server.end();
  await browser.close();
  own.end();
});

describe('the page Explain', () => {
  it('shows the page that others will see, alive under the strict policy, and saves the bytes of the command', async () => {
    const { page, complaints } = await openPage(browser, `${server.urls[0]!}#/explain`);
    const frame = page.frameLocator('iframe');
    await frame.getByText('How the disc of boathouse jetty vane works').first().waitFor();
    await frame.getByLabel('Turn the disc').press('PageUp');
    expect(await frame.locator('#position').textContent()).toBe('16');
    await frame.getByRole('radio', { name: 'For an engineer' }).check();
    await frame.getByText('q = 360° / N').waitFor();

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the page as one file' }).click(),
    ]);
    const words = ['--out', join(own.path, 'made'), '--only', 'bundle', '--builds', '1'];
    vanewright('make', join(own.path, 'instrument.yaml'), ...words);
    const saved = readFileSync((await download.path())!, 'utf8');
    expect(saved).toBe(readFileSync(join(own.path, 'made/how-it-works.html'), 'utf8'));
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
