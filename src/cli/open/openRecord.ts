import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { AlertRelay, LiveRelay } from '../../app/api.ts';
import type { ServedRecord } from '../../server/reviewRoutes.ts';
import { isServer } from '../log/wire.ts';
import { noticeOf } from '../notice.ts';
import { EmbeddedReading } from './embeddedReading.ts';
import { follow } from './follow.ts';
import { loggerEvents, loggerRecord, openFile, openServer } from './wire.ts';

/** A record that is served, and what ends it. */
export interface OpenRecord extends ServedRecord {
  close(): Promise<void>;
}

/** A store's address without what nobody else should read. */
function shownName(store: string): string {
  return isServer(store) ? store.replace(/\/\/[^@/]*@/, '//') : store;
}

/** Opens what `--store` names, and follows what is logged into it. */
export async function openRecord(store: string, say: (text: string) => void): Promise<OpenRecord> {
  const stopper = new AbortController();
  const live = new LiveRelay();
  const alerts = new AlertRelay();
  const isShared = isServer(store);
  const loggerUrl = (): Promise<string | null> => (isShared ? Promise.resolve(null) : noticeOf(store));
  const file = join(store, 'record.duckdb');
  const reading = isShared
    ? await openServer(store)
    : new EmbeddedReading({
        logger: async () => {
          const url = await loggerUrl();
          return url === null ? null : loggerRecord(url);
        },
        open: async () => (existsSync(file) ? openFile(file) : null),
      });
  const logger = async () => {
    const url = await loggerUrl();
    return url === null
      ? null
      : (hear: (event: string, data: unknown) => void, stop: AbortSignal) => loggerEvents(url, hear, stop);
  };
  const following = follow({ store: reading, relay: live, alerts, logger, isShared }, say, stopper.signal);
  return {
    name: shownName(store),
    store: reading,
    live,
    alerts,
    async close() {
      stopper.abort();
      await following;
      await reading.close();
    },
  };
}
