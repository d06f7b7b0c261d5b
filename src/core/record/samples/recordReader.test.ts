import { describe, expect, it } from 'vitest';
import type { RawEntry } from '../rawLog/rawEntry.ts';
import { PLAIN_RULE } from './readingRule.ts';
import { beginPayload, RecordReader } from './recordReader.ts';

const bytesOf = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text));
const entry = (seq: number, kind: RawEntry['kind'], stream: number, payload: Uint8Array): RawEntry => ({
  seq,
  kind,
  stream,
  arrivedMs: null,
  payload,
});
const begin = (seq: number, station: string): RawEntry =>
  entry(seq, 'begin', seq, beginPayload({ station, source: 'file', name: `${station} ü.csv` }));

describe('a raw log read', () => {
  it('keeps sources apart that come in turns, and ends each where it ends', () => {
    const reader = new RecordReader(() => PLAIN_RULE);
    const row = (minute: number): Uint8Array => bytesOf(`2026-05-01T00:${minute}Z,10,3\n`);
    const entries = [
      begin(1, 'jetty'),
      begin(2, 'Überfahrt'),
      entry(3, 'bytes', 1, bytesOf('time,dir,speed_ms\n')),
      entry(4, 'bytes', 2, bytesOf('time,dir,speed_ms\n')),
      entry(5, 'bytes', 1, row(10)),
      entry(6, 'bytes', 2, row(20)),
      entry(7, 'end', 1, new Uint8Array(0)),
      entry(8, 'bytes', 1, row(30)),
      entry(9, 'end', 2, new Uint8Array(0)),
    ];
    for (const one of [...entries, ...entries]) reader.take(one);
    const { samples } = reader.drain();
    expect(samples.map(({ station, stream }) => [station, stream])).toEqual([
      ['jetty', 1],
      ['Überfahrt', 2],
    ]);
    expect(reader.state.open).toEqual([]);
  });

  it('refuses an entry that no version of ours wrote', () => {
    const reader = new RecordReader(() => PLAIN_RULE);
    expect(() => reader.take(entry(1, 'begin', 1, bytesOf('{"station":')))).toThrow('record/raw-entry');
  });
});
