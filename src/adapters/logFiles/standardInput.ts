import { fstatSync } from 'node:fs';
import type { Clock, LineSource } from '../../ports/index.ts';
import type { LogFileOptions } from './logFileSource.ts';

/** Standard input: lines as they come, or an old log when it is redirected from a file. */
export function standardInput({ station, rule }: LogFileOptions, clock: Clock, isOld: boolean): LineSource {
  const begin = { station, source: 'stdin', name: 'standard input', ...(rule ? { rule } : {}) } as const;
  const isFile = isOld || fstatSync(0).isFile();
  return {
    name: 'standard input',
    async run(take) {
      const take1 = (bytes: Uint8Array, isEnd: boolean) =>
        take({ begin, bytes, arrivedMs: isFile ? null : clock.nowMs(), isEnd, done: null });
      try {
        for await (const bytes of process.stdin as AsyncIterable<Uint8Array>) await take1(bytes, false);
      } catch (error) {
        // The stream is destroyed when it is closed from here.
        if (!process.stdin.destroyed) throw error;
      }
      await take1(new Uint8Array(0), true);
    },
    async close() {
      process.stdin.destroy();
    },
  };
}
