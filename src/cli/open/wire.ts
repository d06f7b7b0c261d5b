import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { hostname, networkInterfaces } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { INSTRUMENT_FILE } from '../../app/api.ts';
import { VanewrightError } from '../../core/error/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES } from '../../core/instrument/index.ts';
import type { SampleStore, SerialPorts } from '../../ports/index.ts';
import type { ServedProject } from '../../server/projectRoutes.ts';

/** The folder of the built page. @throws `open/no-pages` */
export function pagesFolder(folder = fileURLToPath(new URL('../../../dist/web/', import.meta.url))): string {
  if (existsSync(join(folder, 'index.html'))) return folder;
  throw new VanewrightError({
    code: 'open/no-pages',
    what: 'The workbench is not built yet.',
    where: folder,
    got: 'no index.html',
    allowed: 'the built page',
    fix: 'Run: npm run build',
  });
}

/**
 * The project of a file, of a folder, or of the folder one stands in.
 *
 * @throws `files/not-found` for a file that is named and not there, `open/no-folder`, `open/file-kind`
 */
export async function projectOf(file: string | null): Promise<ServedProject> {
  const { nodeProjectFolder } = await import('../../adapters/projectFolder/index.ts');
  const named = file ?? '.';
  const isFolder = (await stat(named).catch(() => null))?.isDirectory() ?? false;
  if (isFolder) return { folder: await nodeProjectFolder(named), path: INSTRUMENT_FILE };
  const project = { folder: await nodeProjectFolder(dirname(named)), path: basename(named) };
  if ((await project.folder.read(project.path, INSTRUMENT_FILE_MOST_BYTES)) !== null) return project;
  throw new VanewrightError({
    code: 'files/not-found',
    what: 'There is no such file.',
    where: named,
    got: 'nothing at that path',
    allowed: 'the path of an instrument file, or of a folder to begin in',
    fix: 'Check the spelling, or name the folder to begin a new file there.',
  });
}

/** Name and addresses of this machine. */
export function ownMachine(): { readonly name: string; readonly addresses: readonly string[] } {
  const all = Object.values(networkInterfaces()).flatMap((found) => found ?? []);
  const addresses = all
    .filter(({ internal, scopeid }) => !internal && !scopeid)
    .map(({ address }) => address);
  return { name: hostname(), addresses };
}

/** A token that nobody guesses: 192 random bits. */
export function freshToken(): string {
  return randomBytes(24).toString('base64url');
}

export { openInBrowser } from '../../adapters/desktop/index.ts';

/** Opens a store in a file. @throws `store/in-use` */
export async function openFile(path: string): Promise<SampleStore> {
  const { duckdbSampleStore } = await import('../../adapters/duckdb/index.ts');
  return duckdbSampleStore(path);
}

/** Opens a store on a server. */
export async function openServer(url: string): Promise<SampleStore> {
  const { postgresSampleStore } = await import('../../adapters/postgres/index.ts');
  return postgresSampleStore(url);
}

export { loggerEvents, loggerRecord } from '../../adapters/loggerHttp/index.ts';

/** Serial ports of this machine, and those that are named. */
export async function openPorts(named: readonly string[]): Promise<SerialPorts> {
  const { serialPorts } = await import('../../adapters/serial/index.ts');
  const { machineClock } = await import('../../adapters/logFiles/index.ts');
  return serialPorts(named, machineClock);
}
