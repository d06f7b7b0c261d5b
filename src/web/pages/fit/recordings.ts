import type { FitChoice } from '../../engine/fitView.ts';

type Recordings = FitChoice['recordings'];

/** Files that the reader chose, as recordings. */
export async function recordingsOf(files: readonly File[]): Promise<Recordings> {
  return Promise.all(
    files.map(async (file) => ({
      name: file.name,
      bytes: new Uint8Array(await file.arrayBuffer()),
      changedAt: new Date(file.lastModified).toISOString(),
    })),
  );
}

/** Lines that were pasted or taken from the port, as one recording. */
export function recordingOfText(text: string, nowMs: number): Recordings {
  const bytes = new TextEncoder().encode(text);
  return [{ name: 'pasted.csv', bytes, changedAt: new Date(nowMs).toISOString() }];
}
