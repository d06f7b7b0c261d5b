import { spawn, type ChildProcess } from 'node:child_process';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { postgresSampleStore } from '../../src/adapters/postgres/index.ts';
import { formatLine, type Sample } from '../../src/core/record/index.ts';
import { allSamples } from '../contracts/sampleStore.ts';
import { mqttBroker, type MqttBroker } from '../support/mqttBroker.ts';
import { postgresServer, type PostgresServer } from '../support/postgresServer.ts';
import { COMMAND, vanewright } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';

const JETTY = 'examples/jetty/instrument.yaml';
const STATIONS = ['jetty', 'pier', 'weir'];
/** From line to line of one station. [ms] */
const STEP_MS = 20;

let broker: MqttBroker;
let server: PostgresServer;
let url: string;
let workers: ChildProcess[];
beforeEach(async () => {
  [broker, server, workers] = [await mqttBroker(), await postgresServer(), []];
  url = server.database();
});
afterEach(async () => {
  for (const worker of workers) worker.kill('SIGKILL');
  await broker.stop();
  server.stop();
});

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
const words = (name: string): string[] => [
  ...['log', JETTY, '--from', broker.url('site/+/line'), '--store', url],
  ...['--group', 'ingest', '--worker', name, '--json'],
];

/** Starts a worker and waits until its connections are up. */
async function worker(name: string): Promise<ChildProcess> {
  const child = spawn('node', [COMMAND, ...words(name)], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  workers.push(child);
  const client = await broker.sender();
  const online = new Set<string>();
  client.on('message', (topic, payload) => {
    if (payload.toString() === 'online') online.add(topic);
    else online.delete(topic);
  });
  await client.subscribeAsync('vanewright/worker/+', { qos: 1 });
  const isUp = (): boolean => [...online].filter((topic) => topic.includes(`-ingest-${name}-`)).length === 8;
  while (!isUp()) await pause(20);
  await pause(200);
  await client.endAsync();
  return child;
}

const ended = (child: ChildProcess): Promise<unknown> => new Promise((done) => child.once('close', done));

/** Line of a station whose heading tells its number. */
function lineOf(n: number): string {
  return formatLine({
    lineNumber: n,
    sinceStartMs: 250 + STEP_MS * n,
    counts: [930, 93, 931, 90, 512],
    word: (n % 32).toString(2).padStart(5, '0'),
    headingDeg: (n % 32) * 11.25,
    halfWidthDeg: 5.63,
    flags: [],
    average: null,
    cups: { pulses: 4 * n, edges: 8 * n, gustPulses: null },
  });
}

/** Sends lines of all stations, each when its counter says, until it is told to stop; gives how many of each. */
async function sending(): Promise<() => Promise<number>> {
  const client = await broker.sender();
  const sent: Promise<unknown>[] = [];
  const began = Date.now();
  let isOn = true;
  const send = async (): Promise<number> => {
    let n = 0;
    for (; isOn; n++) {
      await pause(Math.max(0, began + STEP_MS * n - Date.now()));
      for (const station of STATIONS) {
        sent.push(client.publishAsync(`site/${station}/line`, lineOf(n), { qos: 1 }));
      }
    }
    await Promise.all(sent);
    await client.endAsync();
    return n;
  };
  const done = send();
  return () => {
    isOn = false;
    return done;
  };
}

async function stored(station: string): Promise<Sample[]> {
  const store = await postgresSampleStore(url);
  const samples = await allSamples(store, station);
  await store.close();
  return samples;
}

const headings = (samples: readonly Sample[]): (number | null)[] =>
  samples.map(({ headingDeg }) => headingDeg);
const expected = (count: number): number[] => Array.from({ length: count }, (_, n) => (n % 32) * 11.25);

async function allStored(count: number): Promise<void> {
  for (let tries = 0; tries < 100; tries++) {
    const samples = await Promise.all(STATIONS.map(stored));
    if (samples.every(({ length }) => length >= count)) return;
    await pause(200);
  }
}

describe('workers that share the lines of a broker', () => {
  it('read every station as one, each line once and in order, whoever takes it', async () => {
    await Promise.all([worker('a'), worker('b')]);
    const stop = await sending();
    await pause(4000);
    const count = await stop();
    await allStored(count);
    for (const station of STATIONS) {
      const samples = await stored(station);
      expect(headings(samples)).toEqual(expected(count));
      // 4 pulses every step of 20 ms, and never a line that was taken for a restart.
      expect(samples.filter(({ flags }) => flags !== 0)).toEqual([]);
    }
  }, 60_000);

  it('lose nothing and store nothing twice when one is killed and comes back a hundred lines later', async () => {
    await worker('a');
    const dying = await worker('b');
    const stop = await sending();
    await pause(2000);
    dying.kill('SIGKILL');
    await ended(dying);
    await pause(2500);
    await worker('b');
    await pause(1000);
    const count = await stop();
    await allStored(count);
    const before = await Promise.all(STATIONS.map(stored));
    for (const samples of before) {
      expect(headings(samples)).toEqual(expected(count));
      for (const [n, { atMs, withinMs }] of samples.entries()) {
        const steps = (atMs - samples[0]!.atMs) / STEP_MS;
        expect(Math.abs(steps - n) * STEP_MS).toBeLessThanOrEqual(2 * withinMs);
      }
    }
    for (const one of workers) {
      one.kill('SIGTERM');
      if (one.exitCode === null && one.signalCode === null) await ended(one);
    }
    // Read again from the messages themselves, by a worker that never saw them.
    const said = vanewright('log', JETTY, '--store', url, '--group', 'ingest', '--rebuild', '--json');
    expect(said.exit).toBe(0);
    expect(await Promise.all(STATIONS.map(stored))).toEqual(before);
  }, 60_000);

  it('are refused what they cannot do', () => {
    const said = vanewright(
      ...['log', JETTY, '--store', 'record', '--group', 'x', '--from', '-', '--json'],
      ...['--moment', '1:0:0=2026-03-01T10:00Z'],
    );
    const { problems } = JSON.parse(said.out) as { problems: { code: string }[] };
    expect(problems.map(({ code }) => code)).toEqual([
      'log/group-store',
      'log/group-source',
      'log/group-worker',
      'log/group-moment',
    ]);
    expect(said.exit).toBe(2);
  });
});
