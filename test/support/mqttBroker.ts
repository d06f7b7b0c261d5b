import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect as connectTcp } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt, { type MqttClient } from 'mqtt';
import { freePort } from './freePort.ts';

/** A real broker of its own for one test; it keeps what it must over a restart. */
export interface MqttBroker {
  url(topic: string): string;
  /** A client that sends. */
  sender(): Promise<MqttClient>;
  restart(): Promise<void>;
  stop(): Promise<void>;
}

async function started(config: string, port: number): Promise<ChildProcess> {
  const broker = spawn('mosquitto', ['-c', config], { stdio: 'ignore' });
  for (let isUp = false; !isUp;) {
    isUp = await new Promise<boolean>((done) => {
      const socket = connectTcp(port, '127.0.0.1', () => {
        socket.destroy();
        done(true);
      });
      socket.on('error', () => setTimeout(() => done(false), 20));
    });
  }
  return broker;
}

async function stopped(broker: ChildProcess): Promise<void> {
  broker.kill('SIGTERM');
  await new Promise((done) => broker.once('close', done));
}

/** Starts a broker on a free port of this machine. */
export async function mqttBroker(): Promise<MqttBroker> {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-mqtt-'));
  const port = await freePort();
  const user = process.getuid?.() === 0 ? 'user root\n' : '';
  const config = join(folder, 'broker.conf');
  writeFileSync(
    config,
    `listener ${port} 127.0.0.1\nallow_anonymous true\npersistence true\npersistence_location ${folder}/\n` +
      `autosave_interval 1\nmax_inflight_messages 50\nmax_queued_messages 1000000\n${user}`,
  );
  let broker = await started(config, port);
  return {
    url: (topic) => `mqtt://127.0.0.1:${port}/${topic}`,
    sender: () => mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { protocolVersion: 5, reconnectPeriod: 50 }),
    async restart() {
      await stopped(broker);
      broker = await started(config, port);
    },
    async stop() {
      await stopped(broker);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
