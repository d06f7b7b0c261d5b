import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setField, setFields, type FieldEdit } from '../core/instrument/index.ts';
import { usefulChanges, virtualBuilds } from '../core/proof/index.ts';
import type { InstrumentFiles } from '../ports/index.ts';
import { readDesign } from './design.ts';

const jetty = readFileSync(new URL('../../examples/jetty/instrument.yaml', import.meta.url), 'utf8');

function fileOf(text: string): InstrumentFiles {
  return {
    readText: async () => text,
    readBytes: async () => new TextEncoder().encode(text),
    changedAt: async () => '1970-01-01T00:00:00.000Z',
    replaceText: async () => undefined,
  };
}

/** A file's builds, and what would make them better. */
async function built(text: string) {
  const { instrument, head } = await readDesign(fileOf(text), 'instrument.yaml');
  const { need } = instrument;
  const request = { builds: 256, seed: 1, accuracyDeg: need.accuracyDeg };
  const builds = virtualBuilds(head, request);
  return { head, builds, changes: () => usefulChanges(head, need, request, builds) };
}

const edited = (edits: readonly FieldEdit[]): string => setFields(jetty, edits);

const starts: readonly [string, string][] = [
  ['natural binary', edited([{ path: ['disc', 'code'], value: 'natural-binary' }])],
  ['a resistor far off', edited([{ path: ['circuit', 'resistorOhm'], value: 200 }])],
  ['a bore off the middle', edited([{ path: ['disc', 'process', 'boreSdMm'], value: 1 }])],
  ['a need that is too fine', edited([{ path: ['need', 'accuracyDeg'], value: 4 }])],
  ['a turn that is too fast', edited([{ path: ['need', 'turnRateDegPerS'], value: 400 }])],
];

describe('a useful change', () => {
  it.each(starts)('written into the file does what it was told to do: %s', async (_, text) => {
    const changes = (await built(text)).changes();
    expect(changes.length).toBeGreaterThan(0);
    for (const { edits, yield: told, p95Deg, limitDegPerS } of changes) {
      const then = await built(setFields(text, edits));
      expect(then.builds.yield.value).toBe(told.value);
      expect(then.builds.maxErrorDeg.p95).toBe(p95Deg);
      expect(then.head.speed.limitDegPerS).toBe(limitDegPerS);
    }
  });

  it('takes a wished resolution away where it asks for a count', async () => {
    const text = setField(
      setField(jetty, ['need', 'positions'], undefined),
      ['need', 'resolutionDeg'],
      11.25,
    );
    const binary = await built(setField(text, ['disc', 'code'], 'natural-binary'));
    const change = binary.changes().find(({ how }) => how.includes('reflected-gray'))!;
    const written = setFields(setField(text, ['disc', 'code'], 'natural-binary'), change.edits);
    expect(written).not.toContain('resolutionDeg');
    expect((await built(written)).builds.yield.value).toBe(change.yield.value);
  });
});
