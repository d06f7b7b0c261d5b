import { describe, expect, it } from 'vitest';
import { virtualBuilds } from '../../../src/core/proof/index.ts';
import { handDisc } from '../../support/handDisc.ts';
import { handHead } from '../../support/handHead.ts';

/** So large a disc that equal millimetres are equal degrees on all its tracks, within a fifth of a percent. [mm] */
const RADIUS_MM = 10_000;

/** A disc whose edges alone are wrong, by so much of a step. */
function shakenHead(family: string, tracks: number, share: number) {
  const positions = 2 ** tracks;
  const stepMm = (2 * Math.PI * RADIUS_MM) / positions;
  return handHead(
    handDisc({ family, positions, firstRadiusMm: RADIUS_MM, process: { edgeSdMm: share * stepMm } }),
    { circuit: { resistorOhm: 5_000 } },
  );
}

/** Mean misread share of independent runs, and its standard error. */
function simulated(head: ReturnType<typeof shakenHead>): { mean: number; error: number } {
  const runs = Array.from({ length: 20 }, (_, seed) =>
    virtualBuilds(head, { builds: 250, seed, accuracyDeg: 180 }),
  );
  const shares = runs.map((run) => run.misreadShare);
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const variance = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / (shares.length - 1);
  return { mean, error: Math.sqrt(variance / shares.length) };
}

describe('natural binary with edges off by a normal error each', () => {
  it.each([
    [2, 0.56419, 0.02],
    [3, 0.70524, 0.02],
    [4, 0.75101, 0.02],
    [5, 0.76771, 0.01],
    [5, 0.76771, 0.02],
    [5, 0.76771, 0.05],
    [6, 0.77422, 0.02],
    [8, 0.77799, 0.02],
  ])('on %i tracks misreads %f of that error in steps, at %f of a step', (tracks, factor, share) => {
    const { mean, error } = simulated(shakenHead('natural-binary', tracks, share));
    expect(error).toBeLessThan(0.02 * factor * share);
    // 99.7 of 100 intervals hold the true value, and the large disc's own 0.2 % comes on top.
    expect(Math.abs(mean - factor * share)).toBeLessThan(3 * error + 0.002 * factor * share);
  });

  it.each([0.01, 0.02, 0.05])('loses to reflected Gray, which misreads nothing at %f of a step', (share) => {
    const { misreadShare, illegalShare } = virtualBuilds(shakenHead('reflected-gray', 5, share), {
      builds: 1_000,
      seed: 7,
      accuracyDeg: 180,
    });
    expect(misreadShare).toBe(0);
    expect(illegalShare).toBe(0);
  });
});
