import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync } from 'node:fs';
import { appendFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { opened, type Running } from '../support/openCommand.ts';
import { ownFolder } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';
import { until } from '../support/until.ts';
import { vaneLine } from '../support/vaneLine.ts';

let own: ReturnType<typeof ownFolder>;
let cable: ChildProcess;
let server: Running;
let browser: Browser;
const at = (name: string): string => join(own.path, name);
beforeAll(async () => {
  own = ownFolder();
  cpSync(join(ROOT, 'examples/jetty/instrument.yaml'), at('instrument.yaml'));
  cable = spawn('socat', [`pty,raw,echo=0,link=${at('ours')}`, `pty,raw,echo=0,link=${at('theirs')}`]);
  await until('the cable is there', () => existsSync(at('ours')) && existsSync(at('theirs')));
  server = await opened(at('instrument.yaml'), '--port', '0', '--serial', at('ours'));
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  await server.end();
  const closed = new Promise((done) => cable.once('close', done));
  cable.kill();
  await closed;
  own.end();
});

const askLines = (path: string): Promise<Response> =>
  fetch(`${server.urls[0]}api/ports/lines`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ path, baud: 57_600 }),
  });

it('records a turn from a port of the server into the Fit page', async () => {
  const { page, complaints } = await openPage(browser, `${server.urls[0]}#/fit`);
  await page.getByLabel('Or record it from the port').selectOption(at('ours'));
  await page.getByRole('button', { name: 'Record the turn' }).click();
  await page.getByRole('button', { name: 'Stop recording' }).waitFor();
  let sent = 0;
  await until('three lines have come', async () => {
    await appendFile(at('theirs'), vaneLine(sent, sent % 32));
    sent++;
    return /(?:[3-9]|\d\d) lines so far/.test(await page.locator('body').innerText());
  });
  const second = await askLines(at('ours'));
  expect(second.status).toBe(409);
  expect(await second.text()).toContain('open/serial-busy');
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Stop recording' }).click();
  const pasted = page.getByLabel('Lines of the recording');
  await until('the lines are there to be fitted', async () => (await pasted.inputValue()).includes('vw1 '));
  expect(complaints).toEqual([]);
});

it('reads no file by the name of a port', async () => {
  for (const path of ['/etc/passwd', '/dev/null', at('instrument.yaml'), '../ours']) {
    const answer = await askLines(path);
    expect(answer.status, path).toBe(404);
    expect(await answer.text()).toContain('open/no-serial-port');
  }
});
