import { describe, expect, it } from 'vitest';
import { handDisc, type HandDisc } from '../../../test/support/handDisc.ts';
import {
  BOARD,
  handHead,
  LINEAR_HEAD,
  LOG_HEAD,
  QUIET_CIRCUIT,
  SLOW_RATE,
} from '../../../test/support/handHead.ts';
import { trackFromCells } from '../codes/index.ts';
import { VanewrightError, type Problem } from '../error/index.ts';
import { detectorDefaults } from './detectorDefaults.ts';
import type { CircuitSpec, HeadSpec } from './headSpec.ts';
import { planHead } from './planHead.ts';

interface Wish {
  readonly disc?: HandDisc;
  readonly spec?: Partial<HeadSpec>;
  readonly circuit?: Partial<CircuitSpec>;
}

function problemsOf({ disc, ...want }: Wish): readonly Problem[] {
  try {
    return handHead(handDisc(disc), want).faults;
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
}

const codesOf = (problems: readonly Problem[]): string[] => problems.map(({ code }) => code);
const warningsOf = ({ disc, ...want }: Wish): string[] => codesOf(handHead(handDisc(disc), want).warnings);

const cell = {
  ...LOG_HEAD.detector,
  kind: 'photoresistor' as const,
  litOhm: 2_000,
  darkOhm: 200_000,
  gamma: 0.7,
};
const linear = {
  ...LINEAR_HEAD.detector,
  kind: 'phototransistor' as const,
  litMa: 0.5,
  darkMa: 0,
  saturationV: 0.4,
};

describe('a head over a disc', () => {
  it('has a channel in the middle of every track', () => {
    const disc = handDisc();
    const { channels } = handHead(disc);
    expect(channels.map(({ track, radiusMm }) => [track, radiusMm])).toEqual([
      [0, 15],
      [1, 20],
      [2, 25],
      [3, 30],
      [4, 35],
    ]);
  });

  it('takes six standard deviations or 3 % of scale between thresholds, whichever is more', () => {
    const gap = (noiseCounts: number): number => {
      const { levels } = handHead(handDisc(), { circuit: { hysteresisCounts: null, noiseCounts } });
      return levels.highCounts - levels.lowCounts;
    };
    expect(gap(1)).toBeCloseTo(0.03 * 1024, 9);
    expect(gap(20)).toBeCloseTo(6 * Math.sqrt(400 + 1 / 12), 9);
  });

  it('turns counts round with the sensor to ground, and reads the same light', () => {
    const spec = { ...LOG_HEAD };
    const circuit = { hysteresisCounts: 40 };
    const up = handHead(handDisc(), { spec, circuit }).levels;
    const down = handHead(handDisc(), { spec, circuit: { ...circuit, sensorTo: 'ground' } }).levels;
    expect(down.litCounts).toBeCloseTo(1024 - up.litCounts, 9);
    expect(down.darkCounts).toBeCloseTo(1024 - up.darkCounts, 9);
    expect(down.risingLight).toBeCloseTo(up.risingLight, 12);
    expect(down.fallingLight).toBeCloseTo(up.fallingLight, 12);
    expect(down.litMarginCounts).toBeCloseTo(up.litMarginCounts, 9);
    expect(up.risingLight).toBeGreaterThan(up.fallingLight);
  });

  it('keeps a strong phototransistor linear with the resistor it recommends', () => {
    const { levels } = handHead(handDisc(), { spec: { detector: { ...linear, spread: 0.2 } } });
    expect(levels.bestResistorOhm).toBeCloseTo(9_200, 9);
    // 4.6 V at 0.7 mA: two standard deviations stronger than 0.5 mA.
    expect(levels.resistorOhm).toBeLessThanOrEqual(4.6 / 0.0007);
    expect(levels.resistorOhm).toBe(6_200);
  });

  it('is as fast as its narrowest step, and slower with a coarser place for its edges', () => {
    const perfect = handHead(handDisc(), { circuit: { resistorOhm: 5_000 } }).speed;
    expect(perfect.limitDegPerS).toBeCloseTo((11.25 / (perfect.loopMs + perfect.lagMs)) * 1_000, 6);
    const rough = handHead(handDisc({ process: { edgeSdMm: 0.3 } }), {
      circuit: { resistorOhm: 5_000 },
    }).speed;
    const lost = (2 * 2 * 0.3 * 180) / (15 * Math.PI);
    expect(rough.limitDegPerS / perfect.limitDegPerS).toBeCloseTo((11.25 - lost) / 11.25, 9);
  });
});

describe('a head that reads three marks', () => {
  const ternary: Wish = { disc: { family: 'ternary-modular', positions: 27, firstRadiusMm: 16, pitchMm: 6 } };
  const colours = detectorDefaults['colour-sensor'];
  const greys = { ...detectorDefaults['reflectance-pair'], middleMa: 0.27 };
  const spot = { shape: 'round', diameterMm: 2 } as const;

  it.each<[string, string, Partial<HeadSpec>]>([
    [
      'two colours are hardly different',
      'head/marks-alike',
      {
        detector: {
          ...colours,
          marksRgbCounts: [
            [300, 300, 300],
            [303, 300, 300],
            [160, 270, 470],
          ],
        },
      },
    ],
    ['its middle grey is nearly black', 'head/marks-alike', { detector: { ...greys, middleMa: 0.05 } }],
    [
      'its spot covers more than a mark',
      'head/mark-not-seen',
      { detector: colours, aperture: { shape: 'round', diameterMm: 7 } },
    ],
    ['it only tells light from dark', 'head/colours-unseen', { detector: linear }],
    [
      'a count is below nothing',
      'head/impossible-value',
      {
        detector: {
          ...colours,
          marksRgbCounts: [
            [-1, 1, 1],
            [1, 9, 1],
            [1, 1, 9],
          ],
        },
      },
    ],
  ])('cannot where %s: %s', (_, code, spec) => {
    expect(codesOf(problemsOf({ ...ternary, spec: { aperture: spot, ...spec } }))).toContain(code);
  });

  it('reads red, green and blue, or three greys of a code that goes one grey at a time', () => {
    expect(problemsOf({ ...ternary, spec: { aperture: spot, detector: colours } })).toEqual([]);
    const reflected: Wish = { disc: { ...ternary.disc, family: 'ternary-reflected', positions: 26 } };
    const spec = { aperture: spot, detector: greys };
    expect(problemsOf({ ...reflected, spec })).toEqual([]);
    expect(warningsOf({ ...reflected, spec })).not.toContain('head/blend-misread');
  });

  it('is told that grey jumps pass the middle one, and that a colour may be a blend of two others', () => {
    expect(warningsOf({ ...ternary, spec: { aperture: spot, detector: greys } })).toContain(
      'head/blend-misread',
    );
    const blended = {
      ...colours,
      marksRgbCounts: [
        [600, 100, 100],
        [350, 350, 100],
        [100, 600, 100],
      ] as const,
    };
    expect(warningsOf({ ...ternary, spec: { aperture: spot, detector: blended } })).toContain(
      'head/blend-misread',
    );
  });
});

describe('a head in the light of day', () => {
  it('has no room left for pulsed lights where the sun fills the converter', () => {
    const spec = { detector: linear, daylightShare: 3 };
    const circuit = { emitters: 'pulsed', resistorOhm: 6_200 } as const;
    expect(codesOf(problemsOf({ spec, circuit }))).toEqual(['head/daylight-saturates']);
    const [{ fix }] = problemsOf({ spec, circuit }) as [Problem];
    const resistorOhm = Number(/to (\d+)/.exec(fix)![1]);
    expect(codesOf(problemsOf({ spec, circuit: { ...circuit, resistorOhm } }))).not.toContain(
      'head/daylight-saturates',
    );
  });

  it('reads nothing at night where thresholds were set beside steady lights at noon', () => {
    const spec = { detector: linear, daylightShare: 0.6 };
    // A linear sensor switches in the middle of land and window; the middle plus half the hysteresis leaves less than a half.
    expect(codesOf(problemsOf({ spec: { ...spec, daylightShare: 0.4 } }))).toEqual([]);
    expect(codesOf(problemsOf({ spec }))).toEqual(['head/unread-at-night']);
    const [{ fix }] = problemsOf({ spec }) as [Problem];
    const [, resistorOhm, daylightShare] = /resistorOhm to (\d+), .* is ([\d.]+) /.exec(fix)!.map(Number);
    expect(codesOf(problemsOf({ spec: { ...spec, daylightShare: daylightShare! } }))).toEqual([]);
    const pulsed = { emitters: 'pulsed', resistorOhm: resistorOhm! } as const;
    expect(codesOf(problemsOf({ spec, circuit: pulsed }))).not.toContain('head/unread-at-night');
  });

  it('is refused a leak measured at another thickness', () => {
    const leak = { transmittedShare: 0.1, measuredMm: 1 };
    expect(codesOf(problemsOf({ spec: { leak } }))).toEqual(['head/leak-far-off']);
    expect(codesOf(problemsOf({ spec: { leak: { ...leak, measuredMm: 2 } } }))).toEqual([]);
  });
});

describe('a head that cannot read', () => {
  it.each<[string, string, Wish]>([
    [
      'dark hardly differs from lit',
      'head/no-contrast',
      { spec: { ...LOG_HEAD, detector: { ...cell, darkOhm: 4_000 } } },
    ],
    [
      'dark current is nearly that of light',
      'head/no-contrast',
      { spec: { detector: { ...linear, darkMa: 0.45 } } },
    ],
    ['the resistor is absurd', 'head/resistor-unfit', { spec: LOG_HEAD, circuit: { resistorOhm: 47 } }],
    [
      'the thresholds lie beyond lit and dark',
      'head/thresholds-crossed',
      { circuit: { hysteresisCounts: 1_000 } },
    ],
    [
      'the spot hides the shortest marks',
      'head/mark-not-seen',
      { disc: { positions: 128 }, spec: { aperture: { shape: 'slit', widthMm: 9, lengthMm: 3 } } },
    ],
    [
      'the spot reaches over its neighbours',
      'head/spill-switches',
      { spec: { aperture: { shape: 'slit', widthMm: 1, lengthMm: 14 } } },
    ],
    [
      'the beam can hurt',
      'head/laser-hazard',
      { spec: { light: { kind: 'laser', powerMw: 5, wavelengthNm: 650, acceptHazard: false } } },
    ],
    [
      'the beam is not seen',
      'head/laser-hazard',
      { spec: { light: { kind: 'laser', powerMw: 0.5, wavelengthNm: 850, acceptHazard: false } } },
    ],
    ['a value is no number', 'head/impossible-value', { spec: { tangentialSdMm: NaN } }],
    ['a resistor is less than nothing', 'head/impossible-value', { circuit: { resistorOhm: -5 } }],
    [
      'a beam has no width',
      'head/impossible-value',
      { spec: { aperture: { shape: 'gaussian', radiusMm: 0 } } },
    ],
    [
      'a round hole has no width',
      'head/impossible-value',
      { spec: { aperture: { shape: 'round', diameterMm: 0 } } },
    ],
  ])('because %s is refused as %s', (_, code, want) => {
    const problems = problemsOf(want);
    expect(codesOf(problems)).toContain(code);
    for (const problem of problems) {
      expect(problem.got).not.toBe('');
      expect(problem.allowed).not.toBe('');
      expect(problem.fix).not.toBe('');
    }
  });

  it('is told everything that is wrong at once', () => {
    const problems = problemsOf({
      spec: {
        aperture: { shape: 'slit', widthMm: 9, lengthMm: 14 },
        light: { kind: 'laser', powerMw: 5, wavelengthNm: 650, acceptHazard: false },
      },
      disc: { positions: 128 },
    });
    expect(new Set(codesOf(problems))).toEqual(
      new Set(['head/laser-hazard', 'head/mark-not-seen', 'head/spill-switches']),
    );
  });

  it('is told a resistor that works', () => {
    const [problem] = problemsOf({ spec: LOG_HEAD, circuit: { resistorOhm: 47 } });
    expect(problem!.fix).toContain('20000');
    expect(problemsOf({ spec: LOG_HEAD, circuit: { resistorOhm: 20_000 } })).toEqual([]);
  });

  it('is told a hysteresis that works', () => {
    const [problem] = problemsOf({ circuit: { hysteresisCounts: 1_000 } });
    const works = Number(/to (\d+)/.exec(problem!.fix)![1]);
    expect(problemsOf({ circuit: { hysteresisCounts: works } })).toEqual([]);
  });

  it('does not pretend to see colours', () => {
    const disc = handDisc({ positions: 2 });
    const code = { ...disc.code, tracks: [trackFromCells([0, 1, 2], 3)] };
    const { faults } = planHead({ ...disc, code }, LINEAR_HEAD, QUIET_CIRCUIT, BOARD, SLOW_RATE);
    expect(codesOf(faults)).toEqual(['head/colours-unseen']);
  });
});

describe('a head that reads with little to spare', () => {
  it.each<[string, string, Wish]>([
    [
      'of weak contrast',
      'head/weak-contrast',
      { spec: { ...LOG_HEAD, detector: { ...cell, darkOhm: 6_000 } } },
    ],
    ['of stray light', 'head/weak-contrast', { spec: { detector: { ...linear, darkMa: 0.33 } } }],
    ['of a poor resistor', 'head/resistor-poor', { spec: LOG_HEAD, circuit: { resistorOhm: 900 } }],
    ['of a large source', 'head/source-resistance', { spec: LOG_HEAD }],
    [
      'of unequal parts',
      'head/parts-too-unequal',
      { spec: { detector: { ...linear, spread: 0.8 } }, circuit: { thresholds: 'shared' } },
    ],
    [
      'of a wide spot',
      'head/spot-wide',
      { spec: { aperture: { shape: 'round', diameterMm: 3 } }, disc: { positions: 256 } },
    ],
    ['of a long spot', 'head/spot-long', { spec: { aperture: { shape: 'slit', widthMm: 1, lengthMm: 5 } } }],
    [
      'of near neighbours',
      'head/spill',
      { spec: { aperture: { shape: 'slit', widthMm: 1, lengthMm: 8 }, radialSdMm: 0.2 } },
    ],
    [
      'of an accepted laser',
      'head/laser-hazard',
      { spec: { light: { kind: 'laser', powerMw: 5, wavelengthNm: 650, acceptHazard: true } } },
    ],
    [
      'of infrared on cadmium sulphide',
      'head/blind-to-light',
      { spec: { ...LOG_HEAD, light: LINEAR_HEAD.light } },
    ],
  ])('because %s is warned of %s', (_, code, want) => {
    expect(warningsOf(want)).toContain(code);
  });

  it('because of a large source is told that the program reads twice, and not to do it', () => {
    const { warnings } = handHead(handDisc(), { spec: LOG_HEAD });
    const { fix } = warnings.find(({ code }) => code === 'head/source-resistance')!;
    expect(fix).toContain('the program reads each channel twice');
    expect(fix).not.toMatch(/^Read/);
  });

  it('because of an accepted laser is not told to accept it', () => {
    const light = { kind: 'laser', powerMw: 5, wavelengthNm: 650, acceptHazard: true } as const;
    const { warnings } = handHead(handDisc(), { spec: { light } });
    const { fix } = warnings.find(({ code }) => code === 'head/laser-hazard')!;
    expect(fix).not.toContain('acceptHazard');
    expect(fix).toContain('cautions');
  });

  it('because of its turn rate is warned, and told one that it can follow', () => {
    const plan = (turnRateDegPerS: number) =>
      planHead(handDisc(), LINEAR_HEAD, QUIET_CIRCUIT, BOARD, { ...SLOW_RATE, turnRateDegPerS }).warnings;
    const tooFast = plan(1_000_000);
    expect(codesOf(tooFast)).toEqual(['head/turns-too-fast']);
    expect(plan(Number(/to (\d+)/.exec(tooFast[0]!.fix)![1]))).toEqual([]);
  });

  it('because it is very slow is told only a turn rate that a file may ask for', () => {
    const crawling = (riseMs: number) => {
      const spec = { ...LINEAR_HEAD, detector: { ...LINEAR_HEAD.detector, riseMs, fallMs: riseMs } };
      return (turnRateDegPerS: number) =>
        planHead(handDisc(), spec, QUIET_CIRCUIT, BOARD, { ...SLOW_RATE, turnRateDegPerS }).warnings;
    };
    // Half the light is reached after ln 2 of a time constant: a step of 11.25 degrees in 27.7 s is 0.4 deg/s.
    const [slow] = crawling(40_000)(30);
    expect(slow!.fix).toContain('need.turnRateDegPerS to 0.4.');
    expect(crawling(40_000)(0.4)).toEqual([]);
    const [stuck] = crawling(400_000)(30);
    expect(stuck!.fix).not.toContain('turnRateDegPerS');
  });

  it('is not warned of anything when there is enough', () => {
    expect(warningsOf({})).toEqual([]);
    expect(warningsOf({ circuit: { thresholds: 'shared' } })).toEqual([]);
    const light = { kind: 'laser', powerMw: 1, wavelengthNm: 650, acceptHazard: false } as const;
    expect(warningsOf({ spec: { light } })).toEqual([]);
  });
});
