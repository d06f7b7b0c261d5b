import { readFileSync, writeFileSync, cpSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { opened, type Running } from '../support/openCommand.ts';
import { ownFolder } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';
import { until } from '../support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

let own: ReturnType<typeof ownFolder>;
let server: Running | null = null;
beforeEach(() => {
  own = ownFolder();
  cpSync(join(ROOT, 'examples/jetty/instrument.yaml'), file());
});
afterEach(async () => {
  await server?.end();
  server = null;
  own.end();
});
const file = (): string => join(own.path, 'instrument.yaml');
const text = (): string => readFileSync(file(), 'utf8');
describe('a project in a folder', () => {
  it('is edited in the browser with its comments kept, survives a killed server, and follows other editors', async () => {
    server = await opened(file(), '--port', '0');
    const { page, complaints } = await openPage(browser, server.urls[0]!);
    const diameter = page.getByLabel('Disc diameter', { exact: true });
    await diameter.fill('91');
    await until('the first edit is on the disk', () => text().includes('diameterMm: 91'));
    expect(text()).toContain('# An invented instrument');
    await page.getByText('Saved', { exact: true }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);

    await diameter.blur();
    // Another editor: the page follows, since nothing of its own is unsaved.
    writeFileSync(file(), text().replace('diameterMm: 91', 'diameterMm: 93'));
    await until('the page shows the other edit', async () => (await diameter.inputValue()) === '93');

    // Killed, edited meanwhile, started again on the same port: nothing is lost.
    const { port } = new URL(server.urls[0]!);
    await server.end('SIGKILL');
    await diameter.fill('95');
    await page.getByRole('alert').getByText('The server does not answer.').waitFor();
    expect(text()).toContain('diameterMm: 93');
    server = await opened(file(), '--port', port);
    await until('the edit of the silent time is on the disk', () => text().includes('diameterMm: 95'));
    await page.getByText('The server does not answer.').waitFor({ state: 'hidden' });
    expect(complaints.filter((said) => !said.includes('ERR_CONNECTION_REFUSED'))).toEqual([]);
  });

  it('asks whose change stays when both have changed', async () => {
    server = await opened(file(), '--port', '0');
    const { page } = await openPage(browser, server.urls[0]!);
    const diameter = page.getByLabel('Disc diameter', { exact: true });
    await diameter.fill('97');
    writeFileSync(file(), text().replace(/diameterMm: \d+/, 'diameterMm: 99'));
    await page.getByRole('button', { name: 'Take the other version' }).click();
    await until('the page shows the other version', async () => (await diameter.inputValue()) === '99');
    await diameter.fill('98');
    writeFileSync(file(), text().replace('diameterMm: 99', 'diameterMm: 92'));
    await page.getByRole('button', { name: 'Keep mine' }).click();
    await until('the own version is on the disk', () => text().includes('diameterMm: 98'));
  });

  it('begins in an empty folder, and writes nothing before the first change', async () => {
    const empty = ownFolder();
    server = await opened(empty.path, '--port', '0');
    const { page } = await openPage(browser, server.urls[0]!);
    await page.getByText('What do you have, and what do you want to know?').waitFor();
    await page.getByRole('navigation').getByText('Disc').click();
    await page.getByLabel('Disc diameter', { exact: true }).waitFor();
    expect(existsSync(join(empty.path, 'instrument.yaml'))).toBe(false);
    await page.getByLabel('Disc diameter', { exact: true }).fill('88');
    await until('the first file is there', () => existsSync(join(empty.path, 'instrument.yaml')));
    expect(readFileSync(join(empty.path, 'instrument.yaml'), 'utf8')).toContain('diameterMm: 88');
    empty.end();
  });

  it('asks for the token on another address than this machine alone, and takes it from the printed address', async () => {
    server = await opened(file(), '--port', '0', '--token', 'sixteen-signs-ok');
    const url = server.urls[0]!;
    expect(url).toContain('#token=sixteen-signs-ok');
    const { page } = await openPage(browser, url);
    await page.getByLabel('Disc diameter', { exact: true }).waitFor();
    expect(page.url()).not.toContain('sixteen');
    const other = (await openPage(browser, url.replace(/#.*/, ''))).page;
    await other.getByRole('textbox', { name: 'Token' }).fill('wrong');
    await other.getByRole('button', { name: 'Open', exact: true }).click();
    await other.getByRole('textbox', { name: 'Token' }).fill('sixteen-signs-ok');
    await other.getByRole('button', { name: 'Open', exact: true }).click();
    await other.getByLabel('Disc diameter', { exact: true }).waitFor();
  });
});
