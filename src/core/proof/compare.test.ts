import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../test/support/handHead.ts';
import { seededRandom } from '../units/index.ts';
import { virtualBuilds } from './builds/virtualBuilds.ts';
import { compareDesigns } from './compare.ts';

const process = { edgeSdMm: 0.1, boreSdMm: 0.2 };
const spec = { tangentialSdMm: 0.25 };
const gray = handHead(handDisc({ process }), { spec });
const binary = handHead(handDisc({ family: 'natural-binary', process }), { spec });
const request = { builds: 1_000, seed: 3, accuracyDeg: 7.5 };

describe('two designs in the same builds', () => {
  it('have the statistics each has by itself', () => {
    const { first, second } = compareDesigns(gray, binary, request);
    expect(first).toEqual(virtualBuilds(gray, request));
    expect(second).toEqual(virtualBuilds(binary, request));
  });

  it('tell natural binary from Gray', () => {
    const { yieldDifference, onlySecondGood } = compareDesigns(gray, binary, { ...request, accuracyDeg: 9 });
    expect(yieldDifference.low).toBeGreaterThan(0.5);
    expect(onlySecondGood).toBe(0);
  });

  it('do not differ from themselves', () => {
    const { yieldDifference, onlyFirstGood, onlySecondGood } = compareDesigns(gray, gray, request);
    expect([onlyFirstGood, onlySecondGood, yieldDifference.value]).toEqual([0, 0, 0]);
    expect(yieldDifference.high).toBeLessThan(0.01);
  });

  it('differ by less scatter than builds of their own would', () => {
    const better = handHead(handDisc({ process: { ...process, boreSdMm: 0.19 } }), { spec });
    const seeds = Array.from({ length: 40 }, (_, i) => 1 + i);
    const small = { ...request, builds: 200 };
    const paired = seeds.map(
      (seed) => compareDesigns(gray, better, { ...small, seed }).yieldDifference.value,
    );
    const apart = seeds.map(
      (seed) =>
        virtualBuilds(gray, { ...small, seed }).yield.value -
        virtualBuilds(better, { ...small, seed: seed + 1_000 }).yield.value,
    );
    expect(spreadOf(paired)).toBeLessThan(0.3 * spreadOf(apart));
  });

  it('hold the true difference in about 95 of 100 ranges', () => {
    const dim = handHead(handDisc({ process }), {
      spec: { ...LOG_HEAD, ...spec, aperture: { shape: 'slit', widthMm: 1, lengthMm: 3 } },
    });
    const truth = compareDesigns(gray, dim, { ...request, builds: 20_000, seed: 99 }).yieldDifference.value;
    const random = seededRandom(7);
    let held = 0;
    for (let i = 0; i < 100; i++) {
      const seed = Math.floor(1e6 * random.uniform());
      const { low, high } = compareDesigns(gray, dim, { ...request, builds: 100, seed }).yieldDifference;
      if (low <= truth && truth <= high) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(88);
  });

  it('compare a photoresistor in room light with a focused beam', () => {
    const room = handHead(handDisc({ process }), { spec: { ...LOG_HEAD, ...spec, daylightShare: 0.05 } });
    const aperture = { shape: 'gaussian', radiusMm: 0.4 } as const;
    const beam = handHead(handDisc({ process }), { spec: { ...LINEAR_HEAD, ...spec, aperture } });
    const { first, second } = compareDesigns(room, beam, request);
    expect(second.yield.value).toBeGreaterThan(first.yield.value);
  });
});

function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}
