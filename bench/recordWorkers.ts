// How two workers that share one broker and one PostgreSQL compare with one: rows a second until everything is stored.
// Sends as fast as the broker takes it; both workers, broker, server and sender run on this one machine.
import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import pg from 'pg';
import { formatLine } from '../src/core/record/index.ts';
import { mqttBroker, type MqttBroker } from '../test/support/mqttBroker.ts';
import { postgresServer, type PostgresServer } from '../test/support/postgresServer.ts';
import { ROOT } from '../test/support/sourceFiles.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const STATIONS = 40;
const LINES = 400;
/** Lines that one message carries, as a sender does that comes up once in a while. [-] */
const LINES_A_MESSAGE = 10;

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

function lineOf(n: number): string {
  return formatLine({
    lineNumber: n,
    sinceStartMs: 250 + 5 * n,
    counts: [930, 93, 931, 90, 512],
    word: (n % 32).toString(2).padStart(5, '0'),
    headingDeg: (n % 32) * 11.25,
    halfWidthDeg: 5.63,
    flags: [],
    average: null,
    cups: { pulses: 4 * n, edges: 8 * n, gustPulses: null },
  });
}

async function asked(url: string, sql: string): Promise<number> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const { rows } = await client.query<{ n: string }>(sql);
  await client.end();
  return Number(rows[0]!.n);
}

/** Starts a worker as a process of its own. */
function worker(broker: MqttBroker, url: string, name: string): ChildProcess {
  const words = [
    'log',
    'examples/jetty/instrument.yaml',
    '--from',
    broker.url('site/+/line'),
    '--store',
    url,
  ];
  const command = join(ROOT, 'bin/vanewright.mjs');
  return spawn('node', [command, ...words, '--group', 'bench', '--worker', name], {
    cwd: ROOT,
    stdio: 'ignore',
  });
}

/** Waits until this many connections of workers are up. */
async function online(broker: MqttBroker, connections: number): Promise<void> {
  const client = await broker.sender();
  const up = new Set<string>();
  client.on('message', (topic, payload) => {
    if (payload.toString() === 'online') up.add(topic);
  });
  await client.subscribeAsync('vanewright/worker/+', { qos: 1 });
  while (up.size < connections) await pause(20);
  await pause(500);
  await client.endAsync();
}

/** Rows a second that this many workers store. [1/s] */
async function rate(workers: number, server: PostgresServer): Promise<{ rate: number; url: string }> {
  const broker = await mqttBroker();
  const url = server.database();
  const children = Array.from({ length: workers }, (_, w) => worker(broker, url, String(w)));
  try {
    await online(broker, 8 * workers);
    const client = await broker.sender();
    const began = performance.now();
    for (let n = 0; n < LINES; n += LINES_A_MESSAGE) {
      const text = Array.from({ length: LINES_A_MESSAGE }, (_, i) => lineOf(n + i)).join('\n');
      await Promise.all(
        Array.from({ length: STATIONS }, (_, s) =>
          client.publishAsync(`site/station ${s}/line`, text, { qos: 1 }),
        ),
      );
    }
    const rows = STATIONS * LINES;
    while ((await asked(url, 'SELECT count(*) AS n FROM sample')) < rows) await pause(50);
    const seconds = (performance.now() - began) / 1000;
    await client.endAsync();
    return { rate: rows / seconds, url };
  } finally {
    await Promise.all(
      children.map(async (child) => {
        const ended = new Promise((done) => child.once('close', done));
        child.kill('SIGTERM');
        await ended;
      }),
    );
    await broker.stop();
  }
}

const sizeOf = (tables: string): string =>
  `SELECT sum(pg_total_relation_size(c.oid)) AS n FROM pg_class c WHERE c.relkind = 'r' AND c.relname LIKE '${tables}'`;

/** The question this bench answers, in rows. */
export async function run(report: Report): Promise<void> {
  const server = await postgresServer();
  try {
    const one = await rate(1, server);
    const two = await rate(2, server);
    report({ name: 'one worker, rows stored', value: Math.round(one.rate), unit: '1/s' });
    report({ name: 'two workers, rows stored', value: Math.round(two.rate), unit: '1/s' });
    report({ name: 'two workers beside one', value: Number((two.rate / one.rate).toFixed(2)), unit: 'x' });
    const rows = STATIONS * LINES;
    for (const [name, tables] of [
      ['a sample in PostgreSQL with its index', 'sample\\_%'],
      ['its line as it came', 'message\\_%'],
    ] as const) {
      const bytes = (await asked(two.url, sizeOf(tables))) / rows;
      report({ name, value: Math.round(bytes), unit: 'byte' });
    }
  } finally {
    server.stop();
  }
}
