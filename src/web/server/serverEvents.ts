import { askServer, Away } from './askServer.ts';

/** After a stream has ended it is asked for again. [ms] */
const AGAIN_MS = 1500;

async function hearOnce(
  path: string,
  hear: (event: string, data: unknown) => void,
  signal: AbortSignal,
): Promise<void> {
  const { body } = await askServer(path, { signal });
  const reader = body!.pipeThrough(new TextDecoderStream()).getReader();
  let waiting = '';
  for (;;) {
    const { value, done } = await reader.read();
    if (done) return;
    waiting += value;
    const events = waiting.split('\n\n');
    waiting = events.pop()!;
    for (const event of events) {
      const data = /^data: (.*)$/m.exec(event)?.[1];
      if (data !== undefined) hear(/^event: (.*)$/m.exec(event)?.[1] ?? '', JSON.parse(data));
    }
  }
}

/**
 * Hears what the server tells, and listens again whenever that breaks off.
 *
 * Not by the browser's own way of hearing events: that one cannot carry a token.
 *
 * @returns Ends the hearing.
 */
export function serverEvents(path: string, hear: (event: string, data: unknown) => void): () => void {
  const stopper = new AbortController();
  const run = async (): Promise<void> => {
    while (!stopper.signal.aborted) {
      await hearOnce(path, hear, stopper.signal).catch((error: unknown) => {
        if (!(error instanceof Away) && !(error instanceof Error)) throw error;
      });
      await new Promise((done) => setTimeout(done, AGAIN_MS));
    }
  };
  void run();
  return () => stopper.abort();
}
