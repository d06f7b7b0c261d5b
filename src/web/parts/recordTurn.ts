import { askServer, connection, documentOf } from '../server/askServer.ts';
import { store, type Store } from '../project/store.ts';

/** A serial port as the browser gives it. */
interface BrowserPort {
  open(options: { readonly baudRate: number }): Promise<void>;
  close(): Promise<void>;
  readonly readable: ReadableStream<Uint8Array> | null;
}

/** Serial ports of a browser that has them. */
interface BrowserSerial {
  requestPort(): Promise<BrowserPort>;
}

/** A port that the server can read. */
export interface OfferedPort {
  readonly path: string;
  readonly label: string;
}

/** A turn that is being recorded. */
export interface TurnRecorder {
  /** What has come so far. */
  readonly text: Store<string>;
  /**
   * Begins; the browser asks its reader for a port where it can.
   *
   * @param path - Port of the server; `null` lets the browser read one.
   * @throws Refused, Away, and what the browser says.
   */
  start(path: string | null): Promise<void>;
  /** Ends, and gives the recording. */
  stop(): Promise<string>;
}

function browserSerial(): BrowserSerial | null {
  return (navigator as { serial?: BrowserSerial }).serial ?? null;
}

/** Whether this browser reads ports by itself. */
export function readsPorts(): boolean {
  return browserSerial() !== null;
}

/** Ports of the server; none where there is no server. @throws Refused, Away */
export function serverPorts(): Promise<readonly OfferedPort[]> {
  return connection.get() === 'none' ? Promise.resolve([]) : documentOf('ports');
}

async function fromBrowser(
  baud: number,
): Promise<{ bytes: ReadableStream<Uint8Array>; end(): Promise<void> }> {
  const port = await browserSerial()!.requestPort();
  await port.open({ baudRate: baud });
  return { bytes: port.readable!, end: () => port.close() };
}

async function fromServer(path: string, baud: number) {
  const stopper = new AbortController();
  const { body } = await askServer('ports/lines', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ path, baud }),
    signal: stopper.signal,
  });
  return { bytes: body!, end: async () => stopper.abort() };
}

/** Records what a controller sends while its vane is turned by hand. @param baud - [bit/s] */
export function recordTurn(baud: number): TurnRecorder {
  const text = store('');
  let stop: (() => Promise<void>) | null = null;
  return {
    text,
    async start(path) {
      const { bytes, end } = await (path === null ? fromBrowser(baud) : fromServer(path, baud));
      const reader = bytes.getReader();
      const decoder = new TextDecoder();
      text.set('');
      const reading = (async () => {
        for (;;) {
          const { value, done } = await reader.read();
          if (done) return;
          text.set(text.get() + decoder.decode(value, { stream: true }));
        }
      })().catch(() => {});
      stop = async () => {
        await reader.cancel().catch(() => {});
        await reading;
        reader.releaseLock();
        await end();
      };
    },
    async stop() {
      await stop?.();
      stop = null;
      return text.get();
    },
  };
}
