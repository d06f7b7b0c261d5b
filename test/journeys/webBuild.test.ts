import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, openPage, plainFiles, startBrowser } from '../support/browser.ts';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';

const FILE = join(ROOT, 'examples/jetty/instrument.yaml');
const TURNS = ['turn-cw.csv', 'turn-ccw.csv'].map((name) => join(ROOT, 'examples/jetty', name));

let browser: Browser;
let site: Awaited<ReturnType<typeof plainFiles>>;
const folder = ownFolder();
beforeAll(async () => {
  [browser, site] = await Promise.all([startBrowser(), plainFiles()]);
});
afterAll(async () => {
  await Promise.all([browser.close(), site.end()]);
  folder.end();
});

/** A page of the workbench with the jetty vane in it. */
async function jettyAt(name: string, options: BrowserContextOptions = {}) {
  const opened = await openPage(browser, `${site.url}#/${name}`, options);
  const kept = JSON.stringify(readFileSync(FILE, 'utf8'));
  await opened.page.evaluate(`localStorage.setItem('vanewright:project', ${kept})`);
  await opened.page.reload();
  return opened;
}

/** What a click on a button saves. */
async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}

describe('the page that makes the files', () => {
  it('saves the very bytes that the command writes', async () => {
    const { page, complaints } = await jettyAt('make');
    await page.getByRole('button', { name: 'Make all files' }).click();
    const all = page.getByRole('button', { name: 'Save everything as one zip' });
    await all.waitFor({ timeout: 100_000 });
    vanewright('make', FILE, '--out', join(folder.path, 'made'));
    const made = (path: string): Buffer => readFileSync(join(folder.path, 'made', path));
    expect((await saved(page, 'Save everything as one zip')).equals(made('bundle.zip'))).toBe(true);
    for (const path of ['disc.pdf', 'disc.3mf', 'build-sheet.html', 'prints/housing-lid.stl']) {
      expect((await saved(page, `Save ${path}`)).equals(made(path)), path).toBe(true);
    }
    expect(await page.getByText('files are ready').textContent()).toContain('will read right');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('makes the coupon by keys alone and shows what can hurt', async () => {
    const { page, complaints } = await jettyAt('make');
    await page.getByText('Before you begin: what can hurt').waitFor();
    await page.locator('main').focus();
    const name = () => page.locator(':focus').textContent();
    for (let i = 0; i < 20 && (await name()) !== 'Make the coupon'; i++) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Save coupon/coupon.stl' }).waitFor({ timeout: 60_000 });
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('the page that explains a build', () => {
  it('tells what the command tells, writes the table into the file, and takes it back', async () => {
    const { page, complaints } = await jettyAt('fit');
    await page.getByRole('button', { name: 'Explain this build' }).click();
    await page.getByText('Choose a recording first.').waitFor();
    await page.getByLabel('Recordings of the turn').setInputFiles(TURNS);
    await page.getByRole('button', { name: 'Explain this build' }).click();
    await page.getByRole('heading', { name: 'What is wrong, worst first' }).waitFor({ timeout: 60_000 });
    const said = JSON.parse(vanewright('fit', FILE, ...TURNS, '--json').out) as {
      ok: boolean;
      causes: { title: string }[];
      certificate: { tableHash: string };
    };
    const text = (await page.locator('main').textContent())!;
    for (const { title } of said.causes) expect(text).toContain(title);
    expect(text).toContain(said.ok ? 'this build meets the need' : 'does not meet the need yet');
    const certificate = (await saved(page, 'Save certificate.html')).toString();
    expect(certificate).toContain(said.certificate.tableHash);
    await page.getByRole('button', { name: 'Write the table into the file' }).click();
    await page.getByText('The file holds this table now.').waitFor();
    expect((await saved(page, 'Save file as')).toString()).toContain('asBuilt:');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect((await saved(page, 'Save file as')).toString()).toBe(readFileSync(FILE, 'utf8'));
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('answers junk with what was found and what to do', async () => {
    const { page } = await jettyAt('fit');
    const junk = {
      name: 'x<img src=x onerror=alert(1)>.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from([0, 255, 1, 2, 10, 77]),
    };
    await page.getByLabel('Recordings of the turn').setInputFiles(junk);
    await page.getByRole('button', { name: 'Explain this build' }).click();
    await page.getByText('What to do:').first().waitFor();
    expect(await page.locator('img').count()).toBe(0);
    await page.context().close();
  });
});

describe('the page that weighs', () => {
  it('says what serves, and follows a purpose into the file', async () => {
    const { page, complaints } = await jettyAt('weigh');
    await page.getByText('Do not build a disc').first().waitFor();
    await page.getByLabel('What are the readings for?').selectOption('flying-site');
    await page.getByRole('button', { name: 'Take this need into the file' }).click();
    await expect.poll(async () => (await saved(page, 'Save file as')).toString()).toContain('positions: 36');
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe.each(['weigh', 'make', 'fit'])('the page %s', (name) => {
  it.each([
    ['light', 1280],
    ['dark', 360],
  ] as const)(
    'has nothing against it for those who see or hear it otherwise: %s, %i px',
    async (colorScheme, width) => {
      const { page } = await jettyAt(name, { colorScheme, viewport: { width, height: 900 } });
      await page.getByLabel('Verdict').waitFor();
      if (name === 'weigh') await page.getByText('Ten ways of sensing').waitFor();
      expect(await axeFindings(page)).toEqual([]);
      expect(
        await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth'),
      ).toBeLessThanOrEqual(0);
      await page.context().close();
    },
  );
});
