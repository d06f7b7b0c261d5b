import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { BOARD, QUIET_CIRCUIT } from '../../../../test/support/handHead.ts';
import { levelAt, type Level } from '../../codes/index.ts';
import { detectorDefaults } from '../detectorDefaults.ts';
import type { Rgb } from '../headSpec.ts';
import { chromaticityOf, colourReader } from './colourReader.ts';
import { markPlan, markReaderOf } from './markPlan.ts';
import type { MarkChange, MarkReader } from './markReader.ts';
import { markShares, seenMarks } from './seenMarks.ts';

const PAIRS: [Level, Level][] = [
  [0, 1],
  [1, 0],
  [0, 2],
  [2, 0],
  [1, 2],
  [2, 1],
];
const STEPS = 4_000;

/** Changes found by looking at every blend of two marks, one after another. */
function scanned(reader: MarkReader, from: Level, to: Level): MarkChange[] {
  const changes: MarkChange[] = [];
  let last: Level | null = null;
  for (let i = 0; i <= STEPS; i++) {
    const shares = [0, 0, 0];
    shares[from]! += 1 - i / STEPS;
    shares[to]! += i / STEPS;
    const level = reader.judge(shares);
    if (level !== null && level !== last) changes.push({ share: i / STEPS, level });
    last = level ?? last;
  }
  return changes;
}

function expectAsScanned(reader: MarkReader): void {
  for (const [from, to] of PAIRS) {
    const found = reader.changes(from, to);
    const truth = scanned(reader, from, to);
    expect(found.map(({ level }) => level)).toEqual(truth.map(({ level }) => level));
    for (const [i, { share }] of found.entries()) {
      expect(Math.abs(share - truth[i]!.share)).toBeLessThanOrEqual(1.5 / STEPS);
    }
  }
}

describe('three colours told apart', () => {
  it('change where a fine look at every blend says, for any three that lie apart', () => {
    const counts = fc.tuple(
      fc.integer({ min: 50, max: 900 }),
      fc.integer({ min: 50, max: 900 }),
      fc.integer({ min: 50, max: 900 }),
    );
    fc.assert(
      fc.property(
        counts,
        counts,
        counts,
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        (a, b, c, ratio) => {
          const marks: Rgb[] = [a, b, c];
          const centroids = marks.map(chromaticityOf);
          const apart = (p: number, q: number): number =>
            Math.hypot(centroids[p]![0] - centroids[q]![0], centroids[p]![1] - centroids[q]![1]);
          fc.pre(Math.min(apart(0, 1), apart(1, 2), apart(0, 2)) > 0.05);
          const reader = colourReader(marks, { centroids, rejectRatio: ratio, leastSumCounts: 0 });
          for (const [from, to] of PAIRS) {
            const truth = scanned(reader, from, to);
            // A colour accepted over less than the scan's step may be missed by it.
            for (const { share, level } of truth) {
              const near = reader.changes(from, to).filter((change) => change.level === level);
              expect(Math.min(...near.map((change) => Math.abs(change.share - share)))).toBeLessThan(
                1.5 / STEPS,
              );
            }
          }
        },
      ),
      { seed: 20260401, numRuns: 60 },
    );
  });

  it('pass through nothing else on the way between red, green and blue, and change at two thirds of equal light', () => {
    const marks: Rgb[] = [
      [540, 198, 162],
      [225, 450, 225],
      [162, 270, 468],
    ];
    const rule = { centroids: marks.map(chromaticityOf), rejectRatio: 0.5, leastSumCounts: 0 };
    const reader = colourReader(marks, rule);
    for (const [from, to] of PAIRS) {
      const changes = reader.changes(from, to);
      expect(changes.map(({ level }) => level)).toEqual([from, to]);
      // All three marks send back 900 counts: u = 1/(1 + ratio) is a share of the spot, and more where the third is near.
      expect(changes[1]!.share).toBeGreaterThan(2 / 3 - 1e-9);
      if (to === 0) expect(changes[1]!.share).toBeCloseTo(2 / 3, 9);
    }
    expectAsScanned(reader);
  });
});

describe('three greys told apart', () => {
  const detector = { ...detectorDefaults['reflectance-pair'], middleMa: 0.25 };
  const circuit = { ...QUIET_CIRCUIT, hysteresisCounts: 40 };

  it.each(['supply', 'ground'] as const)(
    'change where every blend says, with the sensor to %s',
    (sensorTo) => {
      const plan = markPlan(detector, 6_200, { ...circuit, sensorTo }, BOARD)!;
      const parts = { detector, circuit: { ...circuit, sensorTo }, board: BOARD, resistorOhm: 6_200, plan };
      expectAsScanned(markReaderOf(parts));
    },
  );

  it('pass through the middle one on the way between black and white', () => {
    const plan = markPlan(detector, 6_200, circuit, BOARD)!;
    const reader = markReaderOf({ detector, circuit, board: BOARD, resistorOhm: 6_200, plan });
    expect(reader.changes(0, 2).map(({ level }) => level)).toEqual([0, 1, 2]);
    expect(reader.changes(2, 0).map(({ level }) => level)).toEqual([2, 1, 0]);
  });

  it('are only told apart by a pair whose middle grey has been measured', () => {
    expect(markPlan(detectorDefaults['reflectance-pair'], 6_200, circuit, BOARD)).toBeNull();
    expect(markPlan(detectorDefaults.phototransistor, 6_200, circuit, BOARD)).toBeNull();
  });
});

describe('shares of a spot on three marks', () => {
  const disc = handDisc({ family: 'ternary-modular', positions: 27, firstRadiusMm: 16, pitchMm: 6 });

  it('are those of the spot laid over the code square by square', () => {
    const seen = seenMarks(disc, 2, { shape: 'round', diameterMm: 2.4 });
    for (let place = 0; place < 12; place++) {
      const angle = seen.edgesDeg[place]! + (place - 6) * 0.4;
      const shares = [0, 0, 0];
      let all = 0;
      for (let i = 0; i < 300; i++) {
        for (let j = 0; j < 300; j++) {
          const [x, y] = [(i + 0.5) / 125 - 1.2, (j + 0.5) / 125 - 1.2];
          if (Math.hypot(x, y) > 1.2) continue;
          all += 1;
          const at =
            angle + (Math.atan2(0.8 * x - 0.6 * y, seen.radiusMm + 0.6 * x + 0.8 * y) * 180) / Math.PI;
          shares[levelAt(disc.code.tracks[2]!, at)]! += 1;
        }
      }
      for (const [level, share] of markShares(seen, angle).entries()) {
        expect(Math.abs(share - shares[level]! / all)).toBeLessThan(5e-4);
      }
    }
  });

  it('add up to one everywhere', () => {
    const seen = seenMarks(disc, 1, { shape: 'gaussian', radiusMm: 3 });
    for (let angle = 0; angle < 360; angle += 1.7) {
      expect(markShares(seen, angle).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });
});
