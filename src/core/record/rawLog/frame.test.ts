import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FRAME_HEAD, frameOf, scanFrames } from './frame.ts';
import { rawKinds, type RawEntry, type RawKind } from './rawEntry.ts';

const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

const entry = (seq: number, text = `line ${seq}\n`): RawEntry => ({
  kind: 'bytes',
  stream: 1,
  arrivedMs: 1_709_250_600_000 + seq,
  seq,
  payload: Uint8Array.from([...text].map((c) => c.charCodeAt(0))),
});

const three = [entry(1), entry(2), entry(3)];
const whole = joined(...three.map(frameOf));

const entries = fc.record({
  kind: fc.constantFrom(...(Object.keys(rawKinds) as RawKind[])),
  stream: fc.nat(),
  seq: fc.integer({ min: 1, max: 2 ** 40 }),
  arrivedMs: fc.option(fc.integer({ min: 0, max: 2 ** 45 })),
  payload: fc.uint8Array({ maxLength: 200 }),
});

describe('the frames of the raw log', () => {
  it('give back what was put in, whatever it was', () => {
    fc.assert(
      fc.property(fc.array(entries, { maxLength: 6 }), (all) => {
        const scanned = scanFrames(joined(...all.map(frameOf)));
        expect(scanned.entries.map((e) => ({ ...e, payload: [...e.payload] }))).toEqual(
          all.map((e) => ({ ...e, payload: [...e.payload] })),
        );
        expect(scanned.damage).toEqual([]);
      }),
      { seed: 8 },
    );
  });

  it('end where the power was cut, at every byte', () => {
    const frame = whole.length / 3;
    for (let cut = 0; cut < whole.length; cut++) {
      const scanned = scanFrames(whole.subarray(0, cut));
      expect(scanned.entries).toHaveLength(Math.floor(cut / frame));
      expect(scanned.soundBytes).toBe(Math.floor(cut / frame) * frame);
      expect(scanned.damage.map(({ place, looks }) => `${place} ${looks}`)).toEqual(
        cut % frame === 0 ? [] : ['tail torn'],
      );
    }
  });

  it.each([
    ['zeroed', new Uint8Array(500)],
    ['garbage', Uint8Array.from({ length: 500 }, (_, i) => (i * 131 + 7) % 256)],
  ])('leave out a %s tail', (looks, tail) => {
    const scanned = scanFrames(joined(whole, tail));
    expect(scanned.entries).toHaveLength(3);
    expect(scanned.soundBytes).toBe(whole.length);
    expect(scanned.damage).toEqual([{ at: whole.length, bytes: 500, place: 'tail', looks }]);
  });

  it('never take a frame with any bit changed, and find the next one', () => {
    const frame = whole.length / 3;
    for (let bit = 0; bit < frame * 8; bit++) {
      const spoiled = whole.slice();
      spoiled[frame + (bit >> 3)]! ^= 1 << (bit & 7);
      const scanned = scanFrames(spoiled);
      expect(scanned.entries.map(({ seq }) => seq)).toEqual([1, 3]);
      expect(scanned.damage).toMatchObject([{ at: frame, bytes: frame, place: 'middle' }]);
    }
  });

  it('read any bytes at all without failing', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => {
        const { damage, soundBytes } = scanFrames(bytes);
        expect(soundBytes).toBe(0);
        expect(damage.reduce((sum, { bytes: n }) => sum + n, 0)).toBe(bytes.length);
      }),
      { seed: 9 },
    );
  });

  it('do not mistake a frame inside a payload for one of the log', () => {
    const nested = { ...entry(7), payload: frameOf(entry(1)) };
    expect(scanFrames(frameOf(nested)).entries.map(({ seq }) => seq)).toEqual([7]);
    expect(FRAME_HEAD).toBe(36);
  });
});
