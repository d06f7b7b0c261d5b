import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './freePort.ts';

/** A real server of its own for one test file. */
export interface PostgresServer {
  /** Address of a fresh, empty database. */
  database(): string;
  stop(): void;
}

const binaries = (): string => {
  const root = '/usr/lib/postgresql';
  const [newest] = readdirSync(root).sort((a, b) => Number(b) - Number(a));
  return join(root, newest!, 'bin');
};

/** Starts a server in a folder of its own; the server refuses to run as root, so it runs as its usual user then. */
export async function postgresServer(): Promise<PostgresServer> {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-postgres-'));
  const isRoot = process.getuid?.() === 0;
  if (isRoot) execFileSync('chown', ['postgres', folder]);
  chmodSync(folder, 0o700);
  const data = join(folder, 'data');
  const port = await freePort();
  const run = (program: string, ...words: string[]): void => {
    const [command, all] = isRoot
      ? ['runuser', ['-u', 'postgres', '--', join(binaries(), program), ...words]]
      : [join(binaries(), program), words];
    execFileSync(command as string, all as string[], { stdio: 'ignore', cwd: '/' });
  };
  run('initdb', '-D', data, '-U', 'vane', '-A', 'trust', '--no-sync', '-E', 'UTF8', '--locale=C');
  const settings = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1 -c shared_buffers=64MB`;
  run('pg_ctl', '-D', data, '-w', '-l', join(folder, 'log'), '-o', settings, 'start');
  let databases = 0;
  return {
    database() {
      const name = `vane${databases++}`;
      run('createdb', '-h', '127.0.0.1', '-p', String(port), '-U', 'vane', name);
      return `postgres://vane@127.0.0.1:${port}/${name}`;
    },
    stop() {
      run('pg_ctl', '-D', data, '-m', 'immediate', 'stop');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
