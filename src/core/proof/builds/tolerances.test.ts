import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead } from '../../../../test/support/handHead.ts';
import { causeNames } from './causeNames.ts';
import { loosestFactor } from './tolerances.ts';
import { virtualBuilds } from './virtualBuilds.ts';

const request = { builds: 1_000, seed: 11, accuracyDeg: 100 };

/** Two halves seen by one channel that stands a tenth of a millimetre off its place: the error is 90 degrees and its angle. */
const halves = handHead(handDisc({ family: 'natural-binary', positions: 2, firstRadiusMm: 20 }), {
  spec: { tangentialSdMm: 1 },
});

describe('the loosest tolerance', () => {
  it('is the one whose normal distribution holds the wanted share of builds', () => {
    // 10 degrees at 20 mm are 3.49 mm; 90 of 100 normal draws lie within 1.645 standard deviations.
    const limitMm = (10 * Math.PI * 20) / 180;
    const exact = limitMm / normalQuantile(0.95, 0, 1);
    const found = loosestFactor(halves, request, 0.9, ['placement'])!;
    // 128 draws know a standard deviation within a tenth or so.
    expect(Math.abs(found - exact) / exact).toBeLessThan(0.15);
  });

  it('still reaches the wanted yield, and a tenth more does not', () => {
    const gray = handHead(handDisc({ process: { edgeSdMm: 0.1, boreSdMm: 0.1 } }), {
      spec: { tangentialSdMm: 0.1 },
    });
    const asked = { ...request, accuracyDeg: 8, builds: 128 };
    const factor = loosestFactor(gray, asked, 0.9, causeNames)!;
    const yieldAt = (times: number): number =>
      virtualBuilds(gray, { ...asked, scaled: Object.fromEntries(causeNames.map((cause) => [cause, times])) })
        .yield.value;
    expect(yieldAt(factor)).toBeGreaterThanOrEqual(0.9);
    expect(yieldAt(1.1 * factor)).toBeLessThan(0.9);
  });

  it('is below what there is where the yield is not reached, and none where nothing helps', () => {
    const rough = handHead(handDisc({ process: { boreSdMm: 1 } }));
    const factor = loosestFactor(rough, { ...request, accuracyDeg: 7 }, 0.95, ['bore'])!;
    expect(factor).toBeLessThan(1);
    expect(factor).toBeGreaterThan(0);
    expect(loosestFactor(rough, { ...request, accuracyDeg: 1 }, 0.95, ['bore'])).toBeNull();
  });

  it('is eight times what there is where a cause does no harm', () => {
    expect(loosestFactor(halves, request, 0.9, ['bore'])).toBe(8);
  });
});
