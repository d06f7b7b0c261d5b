import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { detectorDefaults } from '../../head/index.ts';
import { turnModel } from '../turn/turnModel.ts';
import { fineBoundaries } from './fineBoundaries.ts';
import { finePosition } from './finePosition.ts';
import { fineErrors } from './fineReading.ts';

const disc = handDisc({ firstRadiusMm: 15, pitchMm: 5 });
/** One step of 11.25 degrees at 35 mm. */
const slit = { shape: 'slit', widthMm: 7.2, lengthMm: 2 } as const;
const DRAWS = { builds: 40, seed: 1 };

function errorsOf(head: ReturnType<typeof handHead>) {
  return fineErrors(head, fineBoundaries(head, turnModel(head)).boundaries!, DRAWS);
}

describe('reading between the steps', () => {
  it('is exact but for whole counts on a disc without errors, with one channel always in mid-edge', () => {
    const head = handHead(disc, { spec: { aperture: slit }, circuit: { noiseCounts: 0 } });
    const { rmsDeg, worstDeg, unreadShare } = errorsOf(head);
    // One count of some 600 lit is 0.02 degrees of a step at most, and so are its halves either way.
    expect(rmsDeg).toBeLessThan(0.02);
    expect(worstDeg).toBeLessThan(0.05);
    expect(unreadShare).toBe(0);
  });

  it('reaches 1 degree rms on a printed disc of 32 positions with honest tolerances', () => {
    const printed = handDisc({
      firstRadiusMm: 18,
      pitchMm: 5,
      process: { edgeSdMm: 0.1, boreSdMm: 0.1, windowGrowthMm: -0.2 },
    });
    const head = handHead(printed, {
      spec: {
        detector: { ...LINEAR_HEAD.detector, spread: 0.2 },
        tangentialSdMm: 0.2,
        radialSdMm: 0.2,
        aperture: { shape: 'slit', widthMm: 1.2, lengthMm: 2 },
      },
      circuit: { noiseCounts: 1, resistorTolerancePercent: 5 },
    });
    const { asIs, designed, reasons } = finePosition(head, 1);
    expect(asIs).toBeNull();
    expect(reasons[0]).toContain('narrower than a step');
    expect(designed!.errors.rmsDeg).toBeLessThan(1);
    expect(designed!.errors.rmsDeg).toBeGreaterThan(0.1);
    // One step of 11.25 degrees at 38 mm, and a hair more.
    expect(designed!.slitWidthMm).toBeCloseTo(1.05 * 2 * 38 * Math.tan((11.25 * Math.PI) / 360), 1);
  });

  it('is worse by the scatter of edges, as millimetres at a radius', () => {
    const rough = handDisc({ firstRadiusMm: 1000, pitchMm: 5, process: { edgeSdMm: 2 } });
    const head = handHead(rough, {
      spec: { aperture: { shape: 'slit', widthMm: 205, lengthMm: 2 } },
      circuit: { noiseCounts: 0 },
    });
    const list = fineBoundaries(head, turnModel(head)).boundaries!;
    const { rmsDeg } = fineErrors(head, list, { builds: 100, seed: 2 });
    // 2 mm at 1000 to 1020 mm; half of the edges lie on the outermost track.
    const middleMm = 1014;
    expect(Math.abs(rmsDeg / ((2 / middleMm) * (180 / Math.PI)) - 1)).toBeLessThan(0.05);
  });

  it('is spoilt by a photoresistor, whose curve differs from part to part', () => {
    const circuit = { noiseCounts: 1 };
    const log = errorsOf(handHead(disc, { spec: { ...LOG_HEAD, aperture: slit }, circuit }));
    const linear = errorsOf(handHead(disc, { spec: { aperture: slit }, circuit }));
    expect(log.rmsDeg).toBeGreaterThan(3 * linear.rmsDeg);
  });

  it.each([
    ['natural-binary', 32, 'exactly one channel a step'],
    ['switch-ring', 16, 'exactly one channel a step'],
  ])('is not possible with %s, and says so', (family, positions, why) => {
    const head = handHead(handDisc({ family, positions }));
    const { asIs, designed, reasons } = finePosition(head, 1);
    if (head.disc.code.channels.length === 0) return;
    const helps = asIs !== null || designed !== null;
    if (!helps) expect(reasons.join(' ')).toMatch(/cannot|does not|exactly one channel/);
    if (family === 'natural-binary') expect(reasons.join(' ')).toContain(why);
  });

  it('is not possible with colours, and says so', () => {
    const ternary = handDisc({ family: 'ternary-modular', positions: 27, firstRadiusMm: 16, pitchMm: 6 });
    const aperture = { shape: 'round', diameterMm: 2 } as const;
    const head = handHead(ternary, { spec: { detector: detectorDefaults['colour-sensor'], aperture } });
    expect(finePosition(head, 1).designed).toBeNull();
    expect(finePosition(head, 1).reasons[0]).toContain('three marks');
  });

  it('is refused where a slit of one step would be wider than the shortest mark', () => {
    // Finest track inside: its marks are short in millimetres, and a step of the outermost is long.
    const inside = handDisc({ firstRadiusMm: 15, pitchMm: 5 });
    const turned = {
      ...inside,
      tracks: inside.tracks.map((track, i) => ({ ...track, ...ringOf(inside, 4 - i) })),
    };
    const { designed, reasons } = finePosition(handHead(turned), 1);
    expect(designed).toBeNull();
    expect(reasons.join(' ')).toContain('cannot be read finer than its steps');
  });
});

function ringOf({ tracks }: typeof disc, i: number) {
  const { midRadiusMm, innerRadiusMm, outerRadiusMm } = tracks[i]!;
  return { midRadiusMm, innerRadiusMm, outerRadiusMm };
}
