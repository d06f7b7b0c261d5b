import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Alert } from '../../src/ports/index.ts';
import { mqttBroker } from '../support/mqttBroker.ts';
import { COMMAND, ownFolder, vanewright } from '../support/runCli.ts';
import { smtpSink } from '../support/smtpSink.ts';
import { ROOT } from '../support/sourceFiles.ts';

const JETTY = 'examples/jetty/instrument.yaml';
let own: ReturnType<typeof ownFolder>;
beforeEach(() => {
  own = ownFolder();
});
afterEach(() => own.end());

/** A log of the last hours in which the vane stands in wind. */
function frozenLog(): string {
  const minutes = Array.from({ length: 300 }, (_, i) =>
    new Date(Date.now() - (300 - i) * 60_000).toISOString(),
  );
  return `time,dir,speed_ms\n${minutes.map((time, i) => `${time},90,${5 + (i % 3)}`).join('\n')}\n`;
}

it('tells a frozen vane by webhook, broker and mail, once each', async () => {
  const posted: Alert[] = [];
  const server = createServer((request, response) => {
    let body = '';
    request.on('data', (piece) => (body += piece));
    request.on('end', () => {
      posted.push(JSON.parse(body) as Alert);
      response.end();
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', () => done()));
  const { port } = server.address() as { port: number };
  const [broker, mail] = [await mqttBroker(), await smtpSink()];
  const listener = await broker.sender();
  const topics: string[] = [];
  listener.on('message', (topic) => topics.push(topic));
  await listener.subscribeAsync('alerts/#');
  const file = join(own.path, 'today.csv');
  writeFileSync(file, frozenLog());
  const places = [
    `http://127.0.0.1:${port}/hook`,
    broker.url('alerts'),
    `smtp://127.0.0.1:${mail.port}/keeper@example.org`,
  ];
  const alerts = places.flatMap((place) => ['--alert', place]);
  const store = join(own.path, 'store');
  const words = ['log', JETTY, '--from', file, '--store', store, '--station', 'jetty', ...alerts];
  const child = spawn('node', [COMMAND, ...words], { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  expect(await new Promise((done) => child.once('close', done))).toBe(0);
  expect(posted.map(({ state, station, fault }) => [state, station, fault])).toEqual([
    ['raised', 'jetty', 'frozen-vane'],
  ]);
  expect(topics).toEqual(['alerts/jetty/frozen-vane']);
  expect(mail.mails).toHaveLength(1);
  expect(mail.mails[0]).toContain('The vane stands at position');
  await listener.endAsync(true);
  await broker.stop();
  await mail.close();
  server.closeAllConnections();
  server.close();
});

it('does not watch for faults in a worker of a group, which sees only part of the lines', () => {
  const words = ['--store', 'postgres://nobody@127.0.0.1:1/none', '--group', 'night', '--worker', 'one'];
  const said = vanewright(
    'log',
    JETTY,
    '--from',
    'mqtt://127.0.0.1:1/x',
    ...words,
    '--alert',
    'http://127.0.0.1:1/',
    '--json',
  );
  expect(said.exit).toBe(2);
  expect(said.out).toContain('log/alert-group');
});
