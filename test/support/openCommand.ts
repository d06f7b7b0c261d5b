import { spawn, type ChildProcess } from 'node:child_process';
import { COMMAND } from './runCli.ts';
import { ROOT } from './sourceFiles.ts';

/** A running `vanewright open` or `vanewright log`. */
export interface Running {
  /** Addresses it printed, whole. */
  readonly urls: readonly string[];
  readonly child: ChildProcess;
  /** Everything said so far. */
  said(): string;
  /** Ends it as Ctrl-C does; gives its exit code. */
  end(signal?: NodeJS.Signals): Promise<number | null>;
}

const ADDRESS = /(?:is at|Listening on) (http:\S+)/g;

/** Starts the built command and waits until it says where it is. */
export async function running(...words: readonly string[]): Promise<Running> {
  const child = spawn('node', [COMMAND, ...words], { cwd: ROOT });
  let said = '';
  child.stdout.on('data', (bytes: Buffer) => (said += bytes.toString()));
  child.stderr.on('data', (bytes: Buffer) => (said += bytes.toString()));
  const closed = new Promise<number | null>((done) => child.once('close', done));
  const isOver = closed.then(() => true);
  while (!/Stop it with|Listening on/.test(said)) {
    const pause = new Promise<boolean>((done) => setTimeout(() => done(false), 20));
    if (await Promise.race([isOver, pause])) throw new Error(`It ended: ${said}`);
  }
  return {
    urls: [...said.matchAll(ADDRESS)].map(([, url]) => url!),
    child,
    said: () => said,
    end(signal = 'SIGINT') {
      child.kill(signal);
      return closed;
    },
  };
}

/** Starts the workbench without a browser. */
export function opened(...words: readonly string[]): Promise<Running> {
  return running('open', '--no-browser', ...words);
}
