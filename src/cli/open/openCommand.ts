import { VanewrightError } from '../../core/error/index.ts';
import type { Listening } from '../../server/recordServer.ts';
import type { WorkbenchAddress, WorkbenchParts } from '../../server/workbench.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import { addressOf, reachOf, type Reach } from './addresses.ts';
import { openRecord } from './openRecord.ts';
import { freshToken, openInBrowser, openPorts, ownMachine, pagesFolder, projectOf } from './wire.ts';

/** What stands behind `open`, read. */
export interface OpenWords {
  /** Port that was asked for; one of its own when not given. [-] */
  readonly port?: number;
  readonly host: string;
  readonly token?: string;
  readonly browser: boolean;
  readonly store?: string;
  readonly serial: readonly string[];
}

/** Where it listens when nothing is said, so that bookmarks stay good. [-] */
const USUAL_PORT = 7160;
/** Shorter tokens can be guessed by someone who tries for long. [chars] */
const SHORTEST_TOKEN = 16;

function tokenOf({ token }: OpenWords, { isLoopback }: Reach): string | null {
  if (token === undefined) return isLoopback ? null : freshToken();
  if (token.length >= SHORTEST_TOKEN && /^[\x21-\x7e]+$/.test(token)) return token;
  throw new VanewrightError({
    code: 'open/weak-token',
    what: 'That token could be guessed.',
    where: '--token',
    got: `${token.length} signs`,
    allowed: `${SHORTEST_TOKEN} or more letters, digits and signs, without spaces`,
    fix: `Use --token ${freshToken()}, or leave it out and take the one that is printed.`,
  });
}

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';

function cannotListen(address: WorkbenchAddress, error: unknown): VanewrightError {
  return new VanewrightError({
    code: 'open/cannot-listen',
    what: 'The workbench cannot listen there.',
    where: '--host, --port',
    got: `${address.host}:${address.port}: ${error instanceof Error ? error.message : String(error)}`,
    allowed: 'an address of this machine and a free port from 1024 to 65535, or port 0 for any',
    fix: 'Leave --host out and use --port 0, which takes a free one and prints it.',
  });
}

/** Listens; the usual port may be another's, one that was asked for may not. */
async function listening(
  parts: WorkbenchParts,
  address: WorkbenchAddress,
  isUsual: boolean,
): Promise<Listening> {
  // The packages of the server are loaded only when it is wanted.
  const { workbenchServer } = await import('../../server/workbench.ts');
  try {
    return await workbenchServer(parts, address);
  } catch (error) {
    if (!(error instanceof Error && 'syscall' in error)) throw error;
    if (isUsual && isTaken(error)) return listening(parts, { ...address, port: 0 }, false);
    throw cannotListen(address, error);
  }
}

/** Ends when the maker stops the command. */
function stopped(): Promise<void> {
  return new Promise((done) => {
    const stop = (): void => {
      process.off('SIGINT', stop).off('SIGTERM', stop);
      done();
    };
    process.once('SIGINT', stop).once('SIGTERM', stop);
  });
}

const say = (text: string): void => void process.stderr.write(`${text}\n`);

/** Tells the maker where it is, and opens it where that is safe: the words of a program can be read by everyone. */
async function tell(urls: readonly string[], token: string | null, isBrowserWanted: boolean): Promise<void> {
  for (const url of urls) say(`The workbench is at ${url}`);
  say('Stop it with Ctrl-C.');
  if (!isBrowserWanted || token !== null) return;
  if (!(await openInBrowser(urls[0]!))) say('No browser could be started here: open that address yourself.');
}

/** `vanewright open [FILE]` */
export async function runOpen(file: string | null, words: OpenWords): Promise<Outcome> {
  const reach = reachOf(words.host, ownMachine());
  const token = tokenOf(words, reach);
  const pages = pagesFolder();
  const project = await projectOf(file);
  const { port, host, store } = words;
  const record = store === undefined ? null : await openRecord(store, say);
  const address = { host, port: port ?? USUAL_PORT, token, nowMs: Date.now, ...reach };
  const ports = await openPorts(words.serial);
  const parts: WorkbenchParts = { pages, project, record, ports, say };
  const server = await listening(parts, address, port === undefined).catch(async (error: unknown) => {
    await record?.close();
    throw error;
  });
  const urls = reach.shown.map((shown) => addressOf(shown, new URL(server.url).port || '80', token));
  await tell(urls, token, words.browser);
  await stopped();
  await server.close();
  await record?.close();
  return {
    exit: EXIT.good,
    text: 'The workbench is closed; what it saved is in the folder.',
    document: { command: 'open', ok: true, urls },
  };
}
