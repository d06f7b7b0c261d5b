import { VanewrightError } from '../../core/error/index.ts';
import type { RecordServerParts } from '../../server/recordRoutes.ts';
import type { Notice } from '../notice.ts';
import type { Listening } from '../../server/recordServer.ts';

/** Runs the work; Ctrl-C closes the sources, so that what came is stored before the end. */
export async function untilStopped<T>(
  close: () => Promise<void>,
  work: (isStopped: () => boolean) => Promise<T>,
): Promise<T> {
  let isStopped = false;
  const stop = (): void => {
    isStopped = true;
    void close();
  };
  process.once('SIGINT', stop).once('SIGTERM', stop);
  try {
    return await work(() => isStopped);
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}

/** The web interface; its packages are loaded only when it is wanted. */
async function served(parts: RecordServerParts, port: number): Promise<Listening> {
  const { recordServer } = await import('../../server/recordServer.ts');
  try {
    return await recordServer(parts, port);
  } catch (error) {
    throw new VanewrightError({
      code: 'log/port-taken',
      what: 'The web interface cannot listen on that port.',
      where: '--listen',
      got: `${port}: ${error instanceof Error ? error.message : String(error)}`,
      allowed: 'a free port from 1024 to 65535, or 0 for any',
      fix: 'Use --listen 0, which takes a free one and prints it.',
    });
  }
}

/**
 * Serves the record while it is written: on the port that is asked for, and on a free one where no other process can
 * open the store. Gives back what ends it.
 */
export async function listening(
  port: number | undefined,
  notice: Notice | null,
  parts: RecordServerParts,
): Promise<() => Promise<void>> {
  if (port === undefined && !notice) return async () => {};
  const server = await served(parts, port ?? 0);
  await notice?.put(server.url);
  if (port !== undefined) process.stderr.write(`Listening on ${server.url}\n`);
  return async () => {
    await notice?.takeAway();
    await server.close();
  };
}
