import { describe, expect, it } from 'vitest';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import { factorOf, logDeterminant, solved, varianceOf } from './cholesky.ts';
import { gatherChain, nothingGathered, type Sighting } from './motionFilter.ts';

/** Sightings at uneven times with two unknowns that move them. */
function chain(seed: number, count: number): Sighting[] {
  const random = draws(seed);
  let time = 0;
  return Array.from({ length: count }, (_, i) => {
    time += i === 0 ? 0 : 0.5 + random();
    return {
      time,
      drawnDeg: 10 * time + 2 * Math.sin(time / 3) + 0.2 * normal(random),
      variance: 0.02 + 0.05 * random(),
      speed: 9 + 2 * random(),
      row: [
        [0, Math.cos(i)],
        [1, Math.sin(i)],
      ] as const,
    };
  });
}

/**
 * The same from first principles: covariance of all sightings written out as one matrix, the motion being the sum of its
 * random start and of every step's random push, and the unknowns by generalised least squares.
 */
function dense(
  sightings: readonly Sighting[],
  wander: number,
): { values: Float64Array; logVariance: number; square: number } {
  const n = sightings.length;
  const first = sightings[0]!;
  const step = Math.abs(sightings.at(-1)!.drawnDeg - first.drawnDeg) / (n - 1);
  const place = (3 * Math.max(step, 0.5)) ** 2;
  const pace = (0.6 * first.speed) ** 2;
  const pushes = sightings.slice(1).map((sighting, k) => {
    const dt = sighting.time - sightings[k]!.time;
    const q = wander * Math.abs((sighting.speed + sightings[k]!.speed) / 2) ** 3;
    return { at: sighting.time, pp: (q * dt ** 3) / 3, pv: (q * dt ** 2) / 2, vv: q * dt };
  });
  const values = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [a, b] = [sightings[i]!.time, sightings[j]!.time];
      let sum = place + pace * a * b + (i === j ? sightings[i]!.variance : 0);
      for (const { at, pp, pv, vv } of pushes) {
        if (at > a + 1e-12 || at > b + 1e-12) continue;
        sum += pp + pv * (a - at + b - at) + vv * (a - at) * (b - at);
      }
      values[i * n + j] = sum;
    }
  }
  const factor = factorOf({ size: n, values })!;
  const mean = sightings.map(({ time }) => first.drawnDeg + first.speed * time);
  const off = Float64Array.from(sightings, ({ drawnDeg }, i) => drawnDeg - mean[i]!);
  const columns = [0, 1].map((u) => Float64Array.from(sightings, ({ row }) => -row[u]![1]));
  const whitened = [off, ...columns].map((column) => solved(factor, column));
  const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  const weights = Float64Array.from(
    [0, 1].flatMap((i) => [0, 1].map((j) => dot(columns[i]!, whitened[1 + j]!))),
  );
  for (const i of [0, 3]) weights[i]! += 1;
  const right = Float64Array.from([0, 1], (i) => dot(columns[i]!, whitened[0]!));
  return {
    values: solved(factorOf({ size: 2, values: weights })!, right),
    logVariance: logDeterminant(factor, n),
    square: dot(off, whitened[0]!),
  };
}

describe('the filter of smooth motion', () => {
  it.each([1, 2, 3])('finds the same unknowns and likelihood as one dense system, seed %i', (seed) => {
    const sightings = chain(seed, 25);
    const gathered = nothingGathered(2);
    gatherChain(sightings, { order: 2, wander: 1e-3 }, new Float64Array(25).fill(1), gathered);
    const weights = gathered.weights.slice();
    for (const i of [0, 3]) weights[i]! += 1;
    const values = solved(factorOf({ size: 2, values: weights })!, gathered.right);
    const truth = dense(sightings, 1e-3);
    for (const u of [0, 1]) expect(values[u]).toBeCloseTo(truth.values[u]!, 8);
    expect(gathered.logVariance).toBeCloseTo(truth.logVariance, 7);
    expect(gathered.square).toBeCloseTo(truth.square, 7);
  });

  it('is surprised by a jerk, and only there', () => {
    const sightings = chain(4, 40).map((s, i) => (i < 20 ? s : { ...s, drawnDeg: s.drawnDeg + 9 }));
    const surprises: number[] = [];
    gatherChain(
      sightings,
      { order: 2, wander: 1e-5 },
      new Float64Array(40).fill(1),
      nothingGathered(2),
      (i, sigmas) => {
        if (Math.abs(sigmas) > 4) surprises.push(i);
      },
    );
    expect(surprises[0]).toBe(20);
  });
});

describe('cholesky', () => {
  it('solves, and gives the variance of a sum', () => {
    const values = Float64Array.from([4, 2, 2, 3]);
    const factor = factorOf({ size: 2, values })!;
    const x = solved(factor, Float64Array.from([8, 7]));
    expect(x[0]).toBeCloseTo(1.25, 12);
    expect(x[1]).toBeCloseTo(1.5, 12);
    // Inverse of [[4, 2], [2, 3]] is [[3, -2], [-2, 4]]/8: variance of x + y is (3 - 4 + 4)/8.
    expect(
      varianceOf(factor, 2, [
        [0, 1],
        [1, 1],
      ]),
    ).toBeCloseTo(3 / 8, 12);
    expect(logDeterminant(factor, 2)).toBeCloseTo(Math.log(8), 12);
  });

  it('refuses a direction without weight', () => {
    expect(factorOf({ size: 2, values: Float64Array.from([1, 1, 1, 1]) })).toBeNull();
  });
});
