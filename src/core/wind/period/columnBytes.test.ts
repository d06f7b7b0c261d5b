import { describe, expect, it } from 'vitest';
import { columnBytes, columnsOfBytes } from './columnBytes.ts';
import type { SampleColumns } from './sampleColumns.ts';

const columns = (n: number, from: number): SampleColumns => ({
  atMs: Float64Array.from({ length: n }, (_, i) => from + i),
  headingDeg: Float64Array.from({ length: n }, (_, i) => (i * 11.25) % 360),
  speedMPerS: Float64Array.from({ length: n }, (_, i) => i / 7),
  read: Uint8Array.from({ length: n }, (_, i) => i % 4),
});

async function* cut(bytes: Uint8Array, every: number): AsyncIterable<Uint8Array> {
  for (let at = 0; at < bytes.length; at += every) yield bytes.slice(at, at + every);
}

describe('columns on their way to another process', () => {
  it.each([1, 7, 64, 100_000])('come out as they went in when cut every %d bytes', async (every) => {
    const sent = [columns(13, 1e12), columns(0, 0), columns(5, 2e12)];
    const bytes = Buffer.concat(sent.map(columnBytes));
    const came: SampleColumns[] = [];
    for await (const part of columnsOfBytes(cut(bytes, every))) came.push(part);
    expect(came).toEqual(sent);
  });
});
