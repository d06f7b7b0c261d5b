import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { LADDER_DEFAULT, type CircuitSpec, type HeadPlan, type HeadSpec } from '../../head/index.ts';
import { radToDeg } from '../../units/index.ts';
import { exactTurn } from '../turn/exactTurn.ts';
import { causeNames } from './causeNames.ts';
import { rankedCauses } from './causes.ts';
import { emptyTally, countWorst, errorBelow, histogramOf } from './tally.ts';
import { virtualBuilds } from './virtualBuilds.ts';

const REQUEST = { builds: 1_000, seed: 5, accuracyDeg: 8 };

function headWith(
  process: object,
  spec: Partial<HeadSpec> = {},
  circuit: Partial<CircuitSpec> = {},
  family = 'reflected-gray',
): HeadPlan {
  return handHead(handDisc({ family, process }), { spec, circuit: { resistorOhm: 5_000, ...circuit } });
}

const everything = headWith(
  { edgeSdMm: 0.1, boreSdMm: 0.1 },
  { tangentialSdMm: 0.15, radialSdMm: 0.1, detector: { ...LINEAR_HEAD.detector, spread: 0.1 } },
  { thresholds: 'shared', noiseCounts: 2, resistorTolerancePercent: 5, hysteresisCounts: 40 },
);

/** What is asked of the causes of a head: the error it has as drawn, and a yield that few builds can tell. */
function askedOf(head: HeadPlan): Parameters<typeof rankedCauses>[3] {
  return { drawnSquare: exactTurn(head).errors.rmsDeg! ** 2, wantedYield: 0.9 };
}

describe('virtual builds', () => {
  it('are the same for the same seed and others for another', () => {
    expect(virtualBuilds(everything, REQUEST)).toEqual(virtualBuilds(everything, REQUEST));
    expect(virtualBuilds(everything, { ...REQUEST, seed: 6 }).rmsDeg).not.toBe(
      virtualBuilds(everything, REQUEST).rmsDeg,
    );
  });

  it('all read as drawn where nothing goes wrong', () => {
    const perfect = headWith({});
    const built = virtualBuilds(perfect, { ...REQUEST, accuracyDeg: 5.7 });
    const drawn = exactTurn(perfect).errors;
    // Rounding to whole counts still moves a threshold by a third of a count: less than a hundredth of a degree.
    expect(built.yield.value).toBe(1);
    expect(Math.abs(built.rmsDeg! - drawn.rmsDeg!)).toBeLessThan(0.001);
    expect(built.maxErrorDeg.worst - drawn.maxDeg!).toBeLessThan(0.01);
    expect(built.unseenBuilds.value).toBe(0);
  });

  it('spread as the sum of their causes does: rms squared grows by the mean square of each', () => {
    const sd = 0.2;
    const built = virtualBuilds(headWith({ edgeSdMm: sd }), { ...REQUEST, builds: 4_000, accuracyDeg: 20 });
    // An edge moved by x adds x^2 (step/2) ... to the squared error: mean of (q/2 + x)^3 + (q/2 - x)^3 over 3, less q^3/12.
    const { tracks } = handDisc();
    const edges = tracks.flatMap(({ midRadiusMm, windows }) =>
      windows.flatMap(() => [radToDeg(sd / midRadiusMm), radToDeg(sd / midRadiusMm)]),
    );
    const step = 11.25;
    const extra = edges.reduce((sum, deg) => sum + deg ** 2 * step, 0) / 360;
    expect(Math.abs(built.rmsDeg! ** 2 - (step ** 2 / 12 + extra))).toBeLessThan(0.02);
  });

  it('are never out by more than half a step and their one bore offset, and half of them by its median', () => {
    const sd = 0.2;
    const built = virtualBuilds(headWith({ boreSdMm: sd }), { ...REQUEST, builds: 4_000, accuracyDeg: 20 });
    // The offset of two normal directions is Rayleigh: median sd √(2 ln 2). The innermost edge, 15 mm out, is moved most.
    const median = sd * Math.sqrt(2 * Math.LN2);
    expect(built.maxErrorDeg.p50 - 5.625).toBeLessThan(radToDeg(median / 15));
    expect(built.maxErrorDeg.p50 - 5.625).toBeGreaterThan(radToDeg(median / 35));
    expect(built.maxErrorDeg.worst - 5.625).toBeLessThan(radToDeg((5 * sd) / 15));
  });

  it('do not depend on how many others are made with them', () => {
    const few = virtualBuilds(everything, { ...REQUEST, builds: 300 });
    const one = virtualBuilds(everything, { ...REQUEST, builds: 1 });
    expect(few.maxErrorDeg.worst).toBeGreaterThanOrEqual(one.maxErrorDeg.worst);
    expect(few.histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(300);
  });

  it('are judged by the accuracy asked, several steps too', () => {
    const binary = headWith({ edgeSdMm: 0.1 }, {}, {}, 'natural-binary');
    const yieldWithin = (accuracyDeg: number): number =>
      virtualBuilds(binary, { ...REQUEST, builds: 200, accuracyDeg }).yield.value;
    // Where all five tracks change at once any word may show, so a build errs by up to half a turn and no more.
    expect(yieldWithin(11.25)).toBe(0);
    expect(yieldWithin(40)).toBe(0);
    expect(yieldWithin(180)).toBe(1);
  });

  it('misread by more than a step are good where the accuracy asked is wider', () => {
    const loose = headWith({}, { tangentialSdMm: 0.6 });
    const within = (accuracyDeg: number) => virtualBuilds(loose, { ...REQUEST, accuracyDeg });
    const { worst } = within(180).maxErrorDeg;
    expect(worst).toBeGreaterThan(11.25);
    expect(within(worst).misreadShare).toBeGreaterThan(0);
    expect(within(worst).yield.value).toBe(1);
    expect(within(worst - 0.001).yield.value).toBe(1 - 1 / REQUEST.builds);
  });

  it('fail by sensors that differ where thresholds are shared, and not where each has its own', () => {
    const spec = { ...LOG_HEAD, detector: { ...LOG_HEAD.detector, spread: 1.5 } };
    const yieldWith = (thresholds: CircuitSpec['thresholds']): number =>
      virtualBuilds(headWith({}, spec, { thresholds, resistorOhm: null, hysteresisCounts: 200 }), REQUEST)
        .yield.value;
    expect(yieldWith('per-channel')).toBeGreaterThan(0.9);
    expect(yieldWith('shared')).toBeLessThan(yieldWith('per-channel'));
  });

  it('count builds that never show a position', () => {
    const lost = headWith({ edgeSdMm: 2 });
    const built = virtualBuilds(lost, { ...REQUEST, builds: 200, accuracyDeg: 180 });
    expect(built.unseenBuilds.value).toBeGreaterThan(0.5);
    // Every word of this code has a position and any error is allowed, so only builds that miss one are bad.
    expect(built.yield.value).toBeCloseTo(1 - built.unseenBuilds.value, 12);
  });

  it.each([
    ['proof/builds-out-of-range', { builds: 0 }],
    ['proof/builds-out-of-range', { builds: 1.5 }],
    ['proof/builds-out-of-range', { builds: 1e9 }],
    ['proof/seed-not-whole', { seed: 0.5 }],
    ['proof/seed-not-whole', { seed: -1 }],
  ])('are refused as %s for %o', (code, wrong) => {
    expect(() => virtualBuilds(everything, { ...REQUEST, ...wrong })).toThrow(code);
  });
});

describe('taking one cause away', () => {
  const builds = virtualBuilds(everything, { ...REQUEST, accuracyDeg: 7 });
  const causes = rankedCauses(everything, { ...REQUEST, accuracyDeg: 7 }, builds, askedOf(everything));

  it('is looked at for every cause, the most worthwhile first', () => {
    expect(new Set(causes.map(({ cause }) => cause))).toEqual(new Set(causeNames));
    for (const [i, { yieldWithout }] of causes.slice(1).entries()) {
      expect(yieldWithout.value).toBeLessThanOrEqual(causes[i]!.yieldWithout.value);
    }
    expect(causes[0]!.yieldWithout.value).toBeGreaterThan(builds.yield.value);
  });

  it('names a capacitor only where it delays an input by little', () => {
    const adviceFor = (resistorOhm: number): string => {
      const head = headWith({}, {}, { resistorOhm });
      const few = { ...REQUEST, builds: 2 };
      const found = rankedCauses(head, few, virtualBuilds(head, few), askedOf(head)).find(
        ({ cause }) => cause === 'threshold',
      )!;
      const nanofarad = Number(/with (\d+) nF/.exec(found.advice)?.[1] ?? 0);
      const delayMs = head.speed.lagMs + head.speed.loopMs;
      expect(head.levels.sourceOhm * nanofarad * 1e-6).toBeLessThanOrEqual(delayMs / 10);
      return found.advice;
    };
    expect(adviceFor(5_000)).toContain(' nF from each input to ground');
    expect(adviceFor(9_000)).toContain('keep wires short');
  });

  it('leaves what the other causes draw as it was', () => {
    const edgeOnly = headWith({ edgeSdMm: 0.2 });
    const both = headWith({ edgeSdMm: 0.2, boreSdMm: 0.3 });
    const request = { ...REQUEST, accuracyDeg: 20 };
    expect(virtualBuilds(both, { ...request, without: 'bore' })).toEqual(virtualBuilds(edgeOnly, request));
  });

  it('changes nothing where the cause is not there', () => {
    const edgeOnly = headWith({ edgeSdMm: 0.2 });
    const request = { ...REQUEST, accuracyDeg: 20 };
    for (const cause of ['bore', 'placement', 'sensor', 'resistor'] as const) {
      expect(virtualBuilds(edgeOnly, { ...request, without: cause })).toEqual(
        virtualBuilds(edgeOnly, request),
      );
    }
  });

  it('of one cause alone leaves the drawing', () => {
    for (const [cause, head] of [
      ['edge', headWith({ edgeSdMm: 0.3 })],
      ['bore', headWith({ boreSdMm: 0.3 })],
      ['placement', headWith({}, { tangentialSdMm: 0.3, radialSdMm: 0.2 })],
    ] as const) {
      const built = virtualBuilds(head, { ...REQUEST, accuracyDeg: 20, without: cause });
      expect(built.rmsDeg).toBeCloseTo(exactTurn(head).errors.rmsDeg!, 2);
      expect(virtualBuilds(head, { ...REQUEST, accuracyDeg: 20 }).rmsDeg).toBeGreaterThan(
        built.rmsDeg! + 0.01,
      );
    }
  });
});

describe('builds on one wire', () => {
  const onWire = (tolerancePercent: number) =>
    handHead(handDisc(), {
      circuit: { input: 'ladder', noiseCounts: 1, ladder: { ...LADDER_DEFAULT, tolerancePercent } },
    });

  it('misread no word with resistors of 1 %, and many with those of 20 %', () => {
    const request = { ...REQUEST, accuracyDeg: 20 };
    const fine = virtualBuilds(onWire(1), request);
    const coarse = virtualBuilds(onWire(20), request);
    expect(fine.yield.value).toBe(1);
    expect(coarse.yield.value).toBeLessThan(0.6);
    expect(virtualBuilds(onWire(20), { ...request, without: 'resistor' }).yield.value).toBe(1);
  });

  it('show in an exact turn the position of the word that is read in place of another', () => {
    const head = onWire(1);
    const turn = exactTurn(head, { ladder: [1, 1, 1, 1, 1.15, 1, 1, 1, 1, 1] });
    expect(turn.errors.misreadShare).toBeGreaterThan(0.05);
    expect(exactTurn(head).errors.misreadShare).toBe(0);
  });
});

describe('a tally of builds', () => {
  it('knows percentiles to a hundredth of a degree and puts every build in its class', () => {
    const tally = emptyTally();
    for (let i = 1; i <= 100; i++) {
      tally.builds += 1;
      countWorst(tally, i / 10 + 0.001);
    }
    expect(errorBelow(tally, 0.5)).toBeCloseTo(5.01, 9);
    expect(errorBelow(tally, 0.95)).toBeCloseTo(9.51, 9);
    expect(errorBelow(tally, 1)).toBe(tally.worstDeg);
    const { classDeg, counts } = histogramOf(tally);
    expect(classDeg).toBe(0.5);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(100);
    expect(counts[0]).toBe(4);
  });
});
