import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, openPage, plainFiles, startBrowser } from '../support/browser.ts';
import { opened, type Running } from '../support/openCommand.ts';
import { COMMAND, ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';
import { until } from '../support/until.ts';
import { vaneLine } from '../support/vaneLine.ts';
import { windSeries } from '../support/windSeries.ts';

const HOSTILE = '<img src=x onerror=alert(1)>';
let own: ReturnType<typeof ownFolder>;
const at = (name: string): string => join(own.path, name);

/** Three weeks of invented wind that end an hour ago, without some days in the middle. */
function oldLog(): string {
  const every = 600_000;
  const startMs = Math.floor(Date.now() / every) * every - 22 * 86_400_000;
  const rows = windSeries({ seed: 4, count: 21 * 144, intervalMs: every, memory: 100 })
    .filter(({ atMs }) => Math.floor(atMs / 86_400_000) !== 9)
    .map(
      ({ atMs, headingDeg, speedMPerS }) =>
        `${new Date(startMs + atMs).toISOString()},${headingDeg.toFixed(1)},${speedMPerS.toFixed(1)}`,
    );
  return `time,dir,speed_ms\n${rows.join('\n')}\n`;
}

/** A logger that is fed a line now and then, as from a vane. */
class Vane {
  readonly #child: ChildProcess;
  #lines = 0;

  constructor() {
    const words = [
      'log',
      at('instrument.yaml'),
      '--from',
      '-',
      '--store',
      at('record'),
      '--station',
      'jetty',
    ];
    this.#child = spawn('node', [COMMAND, ...words], { cwd: ROOT, stdio: ['pipe', 'ignore', 'inherit'] });
  }

  point(position: number): void {
    this.#child.stdin!.write(vaneLine(this.#lines++, position));
  }

  async end(): Promise<void> {
    const closed = new Promise((done) => this.#child.once('close', done));
    this.#child.stdin!.end();
    await closed;
  }
}

let browser: Browser;
let server: Running;
beforeAll(async () => {
  own = ownFolder();
  cpSync(join(ROOT, 'examples/jetty/instrument.yaml'), at('instrument.yaml'));
  writeFileSync(at('old.csv'), oldLog());
  const words = ['--from', at('old.csv'), '--store', at('record'), '--station'];
  for (const station of ['jetty', 'quay'])
    expect(vanewright('log', at('instrument.yaml'), ...words, station).exit).toBe(0);
  server = await opened(at('instrument.yaml'), '--store', at('record'), '--port', '0');
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  await server.end();
  own.end();
});

const shows = (page: Page, text: string | RegExp): Promise<void> =>
  page.getByText(text).first().waitFor({ state: 'visible' });

describe('the Log page', () => {
  it('shows the end of a record, then each reading as a logger takes it, also over a restart of the server', async () => {
    const { page, complaints } = await openPage(browser, `${server.urls[0]}#/log`);
    await page.getByRole('button', { name: /^jetty/ }).click();
    await shows(page, /Nobody logs just now/);
    // The workbench has looked into the store a moment ago, and still the logger can have it.
    const vane = new Vane();
    const dial = page.getByRole('img', { name: /^Wind of now/ });
    const pointsTo = (text: string) => async () =>
      ((await dial.getAttribute('aria-label')) ?? '').includes(text);
    await until('the logger has the store', () => existsSync(at('record/serving.json')));
    vane.point(8);
    await until('the dial points east', pointsTo('90°, within ± 5.6°'));
    await shows(page, /A logger runs on this computer/);
    vane.point(24);
    await until('the dial points west', pointsTo('270°'));
    await shows(page, /is logged now/);
    await shows(page, 'Lines are missing; nothing is filled in.');
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);

    const { port } = new URL(server.urls[0]!);
    await server.end('SIGKILL');
    await shows(page, 'The server does not answer.');
    vane.point(16);
    server = await opened(at('instrument.yaml'), '--store', at('record'), '--port', port);
    await until('the dial points south', pointsTo('180°'));
    await page.getByText('The server does not answer.').waitFor({ state: 'hidden' });
    await vane.end();
    await shows(page, /Nobody logs just now/);
    expect(existsSync(at('record/serving.json'))).toBe(false);
  });

  it('says what to do where there is no server, no record, and nothing in it yet', async () => {
    const files = await plainFiles();
    const alone = await openPage(browser, `${files.url}#/log`);
    await shows(alone.page, 'This page needs the logger on your own computer.');
    expect(await axeFindings(alone.page)).toEqual([]);
    expect(alone.complaints).toEqual([]);
    await files.end();
    const empty = await opened(at('instrument.yaml'), '--store', at('not yet'), '--port', '0');
    const { page } = await openPage(browser, `${empty.urls[0]}#/review`);
    await shows(page, 'Nothing has been logged yet.');
    expect(existsSync(at('not yet'))).toBe(false);
    await empty.end();
  });
});

describe('the Review page', () => {
  it('reviews the days that were drawn over, and gives the pictures, tables and report away', async () => {
    const { page, complaints } = await openPage(browser, `${server.urls[0]}#/review`);
    await shows(page, /The wind came from/);
    const [first, last] = [page.getByLabel('From the beginning of'), page.getByLabel('to the end of')];
    const calendar = page.getByRole('img', { name: /days with samples/ });
    const box = (await calendar.boundingBox())!;
    await page.mouse.move(box.x + 1.5 * 17, box.y + 14 + 8);
    await page.mouse.down();
    await page.mouse.move(box.x + 1.5 * 17, box.y + 14 + 6.5 * 17, { steps: 4 });
    await page.mouse.up();
    const days = (Date.parse(await last.inputValue()) - Date.parse(await first.inputValue())) / 86_400_000;
    expect(days).toBe(6);
    expect(new Date(await first.inputValue()).getUTCDay()).toBe(1);
    await until(
      'the new week is worked out',
      async () =>
        (await page.getByRole('img', { name: /^The rose/ }).count()) === 1 &&
        (await page.locator('[aria-busy=true]').count()) === 0,
    );
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save rose.svg' }).click();
    const svg = readFileSync(await (await download).path(), 'utf8');
    const out = at('report');
    const [since, lastDay] = [`${await first.inputValue()}T00:00Z`, await last.inputValue()];
    const untilText = new Date(Date.parse(lastDay) + 86_400_000).toISOString();
    const said = vanewright(
      ...['review', at('instrument.yaml'), '--store', at('record'), '--station', 'jetty'],
      ...['--since', since, '--until', untilText, '--out', out],
    );
    expect(said.err).toBe('');
    expect(svg).toBe(readFileSync(join(out, 'pictures/rose.svg'), 'utf8'));
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    // A stretch of the series, drawn over.
    const over = page.locator('.series-plot .u-over').first();
    await over.scrollIntoViewIfNeeded();
    const plot = (await over.boundingBox())!;
    await page.mouse.move(plot.x + 0.4 * plot.width, plot.y + 50);
    await page.mouse.down();
    await page.mouse.move(plot.x + 0.5 * plot.width, plot.y + 50, { steps: 4 });
    await page.mouse.up();
    await until('the series chose days', async () => (await first.inputValue()) > since.slice(0, 10));
  });

  it('shows names of stations as words, whatever they say', async () => {
    const { page, complaints } = await openPage(browser, `${server.urls[0]}#/log`);
    let isRun = false;
    page.on('dialog', () => (isRun = true));
    await page.route('**/api/stations', (route) =>
      route.fulfill({
        json: [{ station: HOSTILE, samples: 1, firstMs: Date.now() - 1000, lastMs: Date.now() }],
      }),
    );
    await shows(page, HOSTILE);
    await page.goto(`${server.urls[0]}#/review`);
    await page.getByRole('combobox').or(page.getByLabel('From the beginning of')).first().waitFor();
    expect(isRun).toBe(false);
    expect(await page.locator('img[src=x]').count()).toBe(0);
    expect(complaints.filter((said) => !/40[04]/.test(said))).toEqual([]);
  });

  it.each(['light', 'dark'] as const)('stands on a narrow screen, %s', async (colorScheme) => {
    for (const name of ['log', 'review']) {
      const { page } = await openPage(browser, `${server.urls[0]}#/${name}`, {
        viewport: { width: 360, height: 740 },
        colorScheme,
      });
      await shows(page, name === 'log' ? /Last reading/ : /The wind came from/);
      const { scrollWidth, clientWidth } = await page
        .locator('html')
        .evaluate(({ scrollWidth, clientWidth }) => ({ scrollWidth, clientWidth }));
      expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
      expect(await axeFindings(page)).toEqual([]);
    }
  });
});
