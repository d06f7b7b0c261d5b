import { SerialPort } from 'serialport';
import { VanewrightError } from '../../core/error/index.ts';
import type { ReadingRule, StreamBegin } from '../../core/record/index.ts';
import type { Clock, LineSource, SourceBytes } from '../../ports/index.ts';

/** Which port, how fast, and whose lines. */
export interface SerialOptions {
  readonly path: string;
  /** [bit/s] */
  readonly baud: number;
  readonly station: string;
  readonly rule?: Partial<ReadingRule>;
  /** A port that went away is opened again after this. [ms] */
  readonly againMs?: number;
}

const AGAIN_MS = 1000;

function opened(path: string, baudRate: number): Promise<SerialPort> {
  return new Promise((done, failed) => {
    const port = new SerialPort({ path, baudRate }, (error) => {
      if (!error) return done(port);
      failed(
        new VanewrightError({
          code: 'log/source-not-found',
          what: 'The serial port cannot be opened.',
          where: path,
          got: error.message,
          allowed: 'a serial port that you may read and that no other program has open',
          fix: 'Check the plug and the name (ls /dev/serial/by-id), and that you are in the group dialout.',
        }),
      );
    });
  });
}

/** Everything a port sends until it closes, one piece after another. */
async function readAll(port: SerialPort, take: (bytes: Uint8Array) => Promise<void>): Promise<void> {
  let waiting: Promise<void> = Promise.resolve();
  let failure: { readonly error: unknown } | null = null;
  await new Promise<void>((done) => {
    port.on('data', (bytes: Uint8Array) => {
      port.pause();
      waiting = waiting
        .then(() => take(bytes))
        .then(
          () => void port.resume(),
          (error: unknown) => {
            failure = { error };
            port.close();
          },
        );
    });
    port.on('close', () => done());
    port.on('error', () => done());
  });
  await waiting;
  if (failure) throw (failure as { readonly error: unknown }).error;
}

/** A controller on a serial port; a port that goes away is waited for. */
export function serialSource(
  { path, baud, station, rule, againMs = AGAIN_MS }: SerialOptions,
  clock: Clock,
): LineSource {
  const begin: StreamBegin = { station, source: 'serial', name: path, ...(rule ? { rule } : {}) };
  let port: SerialPort | null = null;
  let isClosed = false;
  const piece = (bytes: Uint8Array, isEnd: boolean): SourceBytes => ({
    begin,
    bytes,
    arrivedMs: clock.nowMs(),
    isEnd,
    done: null,
  });
  return {
    name: path,
    async run(take) {
      port = await opened(path, baud);
      while (!isClosed) {
        if (port) await readAll(port, (bytes) => take(piece(bytes, false)));
        if (isClosed) break;
        // Unplugged: what was begun is over, and the port may come back.
        await take(piece(new Uint8Array(0), true));
        await new Promise<void>((done) => void clock.after(againMs, done));
        port = await opened(path, baud).catch(() => null);
      }
      await take(piece(new Uint8Array(0), true));
    },
    async close() {
      isClosed = true;
      if (port?.isOpen) await new Promise<void>((done) => port!.close(() => done()));
    },
  };
}
