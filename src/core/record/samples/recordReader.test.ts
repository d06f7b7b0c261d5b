import { describe, expect, it } from 'vitest';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import type { RawEntry } from '../rawLog/rawEntry.ts';
import { PLAIN_RULE } from './readingRule.ts';
import { beginPayload, RecordReader } from './recordReader.ts';

/** The first entry of a log, with that text as its payload. */
function firstEntry(payload: Uint8Array): RawEntry {
  return { seq: 1, kind: 'begin', stream: 0, arrivedMs: null, payload };
}

describe('a raw log', () => {
  it.each(['', '{', 'station: jetty', '{"station":"jetty"', '\u0000'])(
    'whose source begins with "%s" was written by another version, and that is said with the entry',
    (text) => {
      const reader = new RecordReader(() => PLAIN_RULE);
      const payload = new TextEncoder().encode(text);
      const [problem, ...more] = problemsOf(() => reader.take(firstEntry(payload)));
      expect(more).toEqual([]);
      expect(problem).toMatchObject({
        code: 'record/raw-entry',
        where: 'raw entry 1',
        got: `${payload.length} bytes`,
      });
      expect(reader.drain().samples).toEqual([]);
    },
  );

  it('takes a source whose name has letters of any script', () => {
    const reader = new RecordReader(() => PLAIN_RULE);
    const begin = { station: 'Ufer Süd', source: 'serial', name: '/dev/tty-風' } as const;
    const payload = beginPayload(begin);
    expect(Math.max(...payload)).toBeLessThan(0x80); // so that any viewer shows the log
    expect(problemsOf(() => reader.take(firstEntry(payload)))).toEqual([]);
    expect(reader.seq).toBe(1);
  });
});
