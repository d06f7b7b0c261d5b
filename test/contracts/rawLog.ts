import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { NewRawEntry, RawEntry } from '../../src/core/record/index.ts';
import type { RawLog } from '../../src/ports/index.ts';

/** What a contract needs to know of the world behind an adapter. */
export interface RawLogWorld {
  open(): Promise<RawLog>;
  end(): Promise<void>;
}

/** An entry of a pretended source. */
export const rawEntry = (text: string, stream = 1): NewRawEntry => ({
  kind: 'bytes',
  stream,
  arrivedMs: 1_795_608_000_000,
  payload: Uint8Array.from(Buffer.from(text)),
});

/** Everything a log holds after a sequence number. */
export async function allEntries(log: RawLog, afterSeq = 0): Promise<RawEntry[]> {
  const all: RawEntry[] = [];
  for await (const entries of log.read(afterSeq)) all.push(...entries);
  return all;
}

/** Texts of a log, in order. */
export async function allTexts(log: RawLog, afterSeq = 0): Promise<string[]> {
  return (await allEntries(log, afterSeq)).map(({ payload }) => Buffer.from(payload).toString());
}

/** The raw log's promises; every adapter's own test runs them. */
export function rawLogContract(name: string, world: () => Promise<RawLogWorld>): void {
  describe(`${name} keeps the raw log's promises`, () => {
    let here: RawLogWorld;
    let log: RawLog;
    beforeEach(async () => {
      here = await world();
      log = await here.open();
    });
    afterEach(async () => {
      await log.close();
      await here.end();
    });

    it('numbers entries from 1, and gives them back as they came', async () => {
      const odd = {
        kind: 'bytes',
        stream: 1,
        arrivedMs: null,
        payload: Uint8Array.from([0, 255, 10, 13]),
      } as const;
      expect(await log.append([rawEntry('a\n'), odd])).toBe(1);
      expect(await log.append([rawEntry('b\n')])).toBe(3);
      expect(log.lastSeq).toBe(3);
      const all = await allEntries(log);
      expect(all.map(({ seq, arrivedMs, payload }) => [seq, arrivedMs, [...payload]])).toEqual([
        [1, 1_795_608_000_000, [97, 10]],
        [2, null, [0, 255, 10, 13]],
        [3, 1_795_608_000_000, [98, 10]],
      ]);
    });

    it('names a source by the number of its first entry', async () => {
      await log.append([rawEntry('x')]);
      const first = await log.append([{ ...rawEntry('{}'), kind: 'begin', stream: 0 }]);
      expect((await allEntries(log, 1))[0]).toMatchObject({ seq: 2, stream: 2, kind: 'begin' });
      expect(first).toBe(2);
    });

    it('reads on after any entry', async () => {
      await log.append(['a', 'b', 'c'].map((text) => rawEntry(text)));
      expect(await allTexts(log, 2)).toEqual(['c']);
      expect(await allTexts(log, 3)).toEqual([]);
    });

    it('takes many appends at once and keeps each together', async () => {
      const firsts = await Promise.all(
        Array.from({ length: 50 }, (_, i) => log.append([rawEntry(`${i}a`), rawEntry(`${i}b`)])),
      );
      const texts = await allTexts(log);
      expect(firsts.map((seq) => [texts[seq - 1], texts[seq]])).toEqual(
        firsts.map((_, i) => [`${i}a`, `${i}b`]),
      );
    });

    it('has everything when it is opened again, and goes on counting', async () => {
      await log.append([rawEntry('a'), rawEntry('b')]);
      const { name } = log;
      await log.close();
      log = await here.open();
      expect(log.name).toBe(name);
      expect(await allTexts(log)).toEqual(['a', 'b']);
      expect(await log.append([rawEntry('c')])).toBe(3);
    });
  });
}
