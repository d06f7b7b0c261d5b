import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { ROOT } from './sourceFiles.ts';

/** The built workbench. */
export const WEB = join(ROOT, 'dist/web');

/** Chromium as Debian ships it; one for a file of tests, closed at its end. */
export function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-proxy-server'],
  });
}

/** A page with everything it complained about. */
export interface OpenPage {
  readonly page: Page;
  readonly complaints: string[];
}

/** A fresh page, with the complaints of its console and of its scripts. */
export async function openPage(
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(url);
  return { page, complaints };
}

/** What the accessibility checker finds wrong on a page: rule and place. */
export async function axeFindings(page: Page): Promise<string[]> {
  const source = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  await page.evaluate(source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
};

/** The workbench as plain files, as any server of files would give it. */
export async function plainFiles(): Promise<{ readonly url: string; end(): Promise<void> }> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url!, 'http://localhost');
    const path = pathname === '/' ? '/index.html' : pathname;
    readFile(join(WEB, path)).then(
      (content) => response.writeHead(200, { 'content-type': types[extname(path)] ?? '' }).end(content),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    end: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/** What a page without a server runs before anything else, so that it finds this file kept in its browser. */
export function keeping(instrumentFile: string): string {
  return `localStorage.setItem('vanewright:project', ${JSON.stringify(instrumentFile)})`;
}
