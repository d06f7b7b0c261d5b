// The workbench in Chromium: frames while a disc of 10 tracks and 1,024 positions turns, first paint, size of scripts.
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { keeping, openPage, plainFiles, startBrowser } from '../test/support/browser.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

/** The largest disc that a page is asked to turn smoothly. */
const LARGE = `vanewright: 1
name: large disc
need: { positions: 1024, accuracyDeg: 2, turnRateDegPerS: 20 }
disc:
  code: reflected-gray
  diameterMm: 560
  hubDiameterMm: 260
  process: { kind: film }
head:
  detector: { kind: phototransistor }
  light: { kind: led, currentMa: 10 }
  aperture: { shape: slit, widthMm: 0.3, lengthMm: 2 }
circuit: { input: multiplexer }
`;

const TURN_MS = 5_000;
/** Goals of DESIGN section 9. */
const GOAL_FRAME_MS = 1000 / 60;
const GOAL_PAINT_MS = 1_000;
const GOAL_SCRIPT_KB = 250;

/** What the page runs to time its frames; text, so that no tool on the way puts names of its own into it. */
const TIMER = `new Promise((done) => {
  const times = [];
  let before = performance.now();
  const end = before + LAST_MS;
  requestAnimationFrame(function tick(now) {
    times.push(now - before);
    before = now;
    if (now < end) requestAnimationFrame(tick);
    else done(times.slice(2));
  });
})`;

/** Times between frames while the page does what it does. [ms] */
function frameTimes(page: Page, lastMs: number): Promise<number[]> {
  return page.evaluate<number[]>(TIMER.replace('LAST_MS', String(lastMs)));
}

/** A share of a list in order. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

const rounded = (value: number): number => Number(value.toFixed(1));

async function firstLoad(browser: Browser, url: string, report: Report): Promise<void> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const scripts = new Map<string, Promise<number>>();
  page.on('response', (response) => {
    if (!response.url().endsWith('.js') || scripts.has(response.url())) return;
    scripts.set(
      response.url(),
      response.body().then((body) => gzipSync(body, { level: 9 }).length),
    );
  });
  await page.goto(`${url}#/disc`);
  await page.getByRole('slider', { name: 'The disc on its shaft' }).waitFor();
  await page.waitForTimeout(500);
  const bytes = (await Promise.all(scripts.values())).reduce((sum, size) => sum + size, 0);
  const paintMs = await page.evaluate<number>(
    "performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Infinity",
  );
  report({ name: `first paint, goal ${GOAL_PAINT_MS}`, value: rounded(paintMs), unit: 'ms' });
  report({
    name: `scripts of the first page, goal ${GOAL_SCRIPT_KB}`,
    value: rounded(bytes / 1000),
    unit: 'kB gzip',
  });
  await context.close();
}

/** What a page that draws nothing reaches on this machine: the rival of the turning disc. */
async function stillFrames(browser: Browser): Promise<number[]> {
  const { page } = await openPage(browser, 'about:blank');
  return frameTimes(page, 2_000);
}

async function turning(browser: Browser, url: string): Promise<number[]> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript({ content: keeping(LARGE) });
  await page.goto(`${url}#/disc`);
  await page.getByRole('button', { name: 'Let it turn' }).click();
  // The page has come to rest but for the turning.
  await page.waitForTimeout(4_000);
  const times = await frameTimes(page, TURN_MS);
  await context.close();
  return times;
}

export async function run(report: Report): Promise<void> {
  const browser = await startBrowser();
  const files = await plainFiles();
  try {
    await firstLoad(browser, files.url, report);
    const still = await stillFrames(browser);
    const times = await turning(browser, files.url);
    const p50 = quantile(times, 0.5);
    report({ name: 'frame of an empty page, median', value: rounded(quantile(still, 0.5)), unit: 'ms' });
    report({
      name: `frame while turning, median, goal ${rounded(GOAL_FRAME_MS)}`,
      value: rounded(p50),
      unit: 'ms',
    });
    report({ name: 'frame while turning, 95 of 100', value: rounded(quantile(times, 0.95)), unit: 'ms' });
    report({
      name: 'of the frames of an empty page',
      value: rounded(quantile(still, 0.5) / p50),
      unit: 'times',
    });
  } finally {
    await browser.close();
    await files.end();
  }
}
