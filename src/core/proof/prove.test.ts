import { describe, expect, it } from 'vitest';
import { handHead, LINEAR_HEAD, LOG_HEAD, QUIET_CIRCUIT } from '../../../test/support/handHead.ts';
import { buildCode } from '../codes/index.ts';
import { planDisc, type DiscSpec } from '../disc/index.ts';
import type { CircuitSpec, HeadSpec } from '../head/index.ts';
import { prove } from './prove.ts';

const DISC: DiscSpec = {
  code: 'reflected-gray',
  codeFile: null,
  codeOptions: {},
  diameterMm: 90,
  bore: { shape: 'round', diameterMm: 6 },
  hubDiameterMm: 26,
  thicknessMm: 3,
  webMm: 1,
  rimMm: 2,
  finest: 'outside',
  windowLevel: 1,
  notch: { widthMm: 2, depthMm: 1 },
  process: {
    kind: 'laser',
    minWindowMm: 0.5,
    minLandMm: 1,
    minWebMm: 1,
    edgeSdMm: 0.05,
    windowGrowthMm: 0,
    boreSdMm: 0.1,
  },
};

const NEED = {
  positions: 32,
  accuracyDeg: 8,
  turnRateDegPerS: 90,
  turnRangeDeg: 360,
  mustSurvivePowerLoss: true,
  wantedYield: 0.95,
};

interface Wish {
  readonly disc?: Partial<DiscSpec>;
  readonly spec?: Partial<HeadSpec>;
  readonly circuit?: Partial<CircuitSpec>;
  readonly need?: Partial<typeof NEED>;
  readonly builds?: number;
}

function proofOf({ disc: wanted = {}, spec = {}, circuit = {}, need = {}, builds = 300 }: Wish = {}) {
  const discSpec = { ...DISC, ...wanted };
  const disc = planDisc(buildCode(discSpec.code, need.positions ?? 32), discSpec);
  const head = handHead(disc, {
    spec: { ...LINEAR_HEAD, tangentialSdMm: 0.1, radialSdMm: 0.1, ...spec },
    circuit: { ...QUIET_CIRCUIT, hysteresisCounts: null, noiseCounts: 1, ...circuit },
  });
  return prove({ instrument: { need: { ...NEED, ...need } }, disc, head, builds, seed: 1 });
}

describe('a proof', () => {
  const good = proofOf();

  it('says yes to a design that reads, with the numbers that make it so', () => {
    expect(good.verdict).toBe('yes');
    expect(good.builds.yield.value).toBeGreaterThan(0.95);
    expect(good.reasons.join(' ')).toContain('within 8°');
    expect(good.exactTurn.errors.misreadShare).toBe(0);
  });

  it('holds natural binary against it on the same disc, and tells why that loses', () => {
    const { rival } = good;
    expect(rival!.family).toBe('natural-binary');
    expect(rival!.builds.yield.value).toBe(0);
    expect(rival!.builds.misreadShare).toBeGreaterThan(0);
    expect(rival!.builds.seed).toBe(good.builds.seed);
    // The two boundaries where all five tracks change, and the farthest that they can read: 15 steps of 11.25 degrees.
    expect(rival!.why).toContain('15|16');
    expect(rival!.why).toContain('31|0');
    expect(rival!.why).toContain('change 5');
    expect(rival!.why).toContain('168.75°');
  });

  it('says no to natural binary, names its boundaries, and holds Gray against it', () => {
    const binary = proofOf({ disc: { code: 'natural-binary' } });
    expect(binary.verdict).toBe('no');
    expect(binary.reasons.join(' ')).toMatch(/15\|16.*168\.75°/);
    expect(binary.rival!.family).toBe('reflected-gray');
    expect(binary.rival!.builds).toEqual(good.builds);
    expect(good.rival!.builds).toEqual(binary.builds);
  });

  it('says no where half a step is more than the accuracy asked, and names a count that would do', () => {
    const { verdict, reasons } = proofOf({ need: { accuracyDeg: 3 } });
    expect(verdict).toBe('no');
    expect(reasons[0]).toContain('5.625°');
    expect(reasons[0]).toContain('need.positions to 60');
  });

  it('says no to a turn rate beyond the speed limit', () => {
    const { verdict, reasons, warnings } = proofOf({ need: { turnRateDegPerS: 1_000_000 } });
    expect(verdict).toBe('no');
    expect(reasons.join(' ')).toContain('1000000 deg/s');
    expect(reasons).toHaveLength(1);
    expect(warnings).toEqual([]);
  });

  it('takes an accuracy of several steps at its word, and tells how often a build is a step out', () => {
    const spec = { tangentialSdMm: 0.6 };
    const asked = proofOf({ spec, need: { accuracyDeg: 40, wantedYield: 0.999 } });
    expect(asked.verdict).toBe('yes');
    expect(asked.reasons[0]).toContain('within 40°');
    expect(asked.builds.misreadShare).toBeGreaterThan(0);
    expect(asked.reasons.join(' ')).toContain('You accept more than a step of 11.25°');
    expect(proofOf({ spec, need: { accuracyDeg: 11.25, wantedYield: 0.999 } }).verdict).toBe('no');
  });

  it('says how many builds it rests on, and that one is too few to be sure', () => {
    const { verdict, reasons } = proofOf({ builds: 1 });
    expect(verdict).toBe('yes');
    expect(reasons[0]).toContain('1 of 1 virtual builds');
    // All good, 95 in 100 wanted: 19 z² = 72.99 builds, as a maker would type it.
    expect(reasons[1]).toMatch(
      /^1 virtual build is too few to be sure: .* from 20\.7 to 100 %.* 73 would do/,
    );
    expect(good.reasons[0]).toContain('of 300 virtual builds');
    expect(good.reasons.join(' ')).not.toContain('too few');
  });

  it('repeats a turn rate below one degree a second as it was written', () => {
    expect(proofOf({ need: { turnRateDegPerS: 0.5 } }).reasons.join(' ')).toContain('you ask for 0.5 deg/s');
    expect(proofOf({ need: { turnRateDegPerS: 0.1 } }).reasons.join(' ')).toContain('you ask for 0.1 deg/s');
  });

  it('says of windows that come out smaller that they are narrower', () => {
    const narrow = { ...DISC.process, windowGrowthMm: -0.2 };
    const wide = { shape: 'gaussian', radiusMm: 1.2 } as const;
    const { reasons } = proofOf({ disc: { process: narrow }, spec: { ...LOG_HEAD, aperture: wide } });
    expect(reasons.join(' ')).toContain('Windows come out 0.2 mm narrower than drawn');
  });

  it('says no to too few good builds, and what to tighten first', () => {
    const { verdict, reasons, causes } = proofOf({ disc: { process: { ...DISC.process, boreSdMm: 0.6 } } });
    expect(verdict).toBe('no');
    expect(causes[0]!.cause).toBe('bore');
    expect(reasons.join(' ')).toContain('bore off the middle');
    expect(reasons.join(' ')).toContain(causes[0]!.advice);
  });

  it('says no where even the drawing reads too far out, and why', () => {
    const wide = { shape: 'gaussian', radiusMm: 1.2 } as const;
    const { verdict, reasons } = proofOf({
      spec: { ...LOG_HEAD, aperture: wide },
      need: { turnRateDegPerS: 1 },
    });
    expect(verdict).toBe('no');
    expect(reasons.join(' ')).toMatch(/exactly as drawn.*of full light/);
  });

  it('warns that a wheel which only counts is lost after a power cut, whatever the verdict', () => {
    const wheel = proofOf({ disc: { code: 'counting-wheel' }, need: { accuracyDeg: 9 } });
    expect(wheel.reasons.join(' ')).toContain('after a power cut');
    expect(good.reasons.join(' ')).not.toContain('power cut');
    expect(wheel.exactTurn.errors.misreadShare).toBe(0);
    expect(wheel.verdict).toBe('no');
    const told = proofOf({
      disc: { code: 'counting-wheel' },
      need: { accuracyDeg: 9, mustSurvivePowerLoss: false },
    });
    expect(told.verdict).toBe('yes');
  });

  it('says why the other code cannot be laid on the same disc', () => {
    // Marks of one step are half as long as the shortest of Gray: 1.9 mm on the outermost track of this disc.
    const { rival, reasons } = proofOf({
      disc: { process: { ...DISC.process, minWindowMm: 2 } },
      need: { positions: 128 },
    });
    expect(rival).toBeNull();
    expect(reasons.at(-1)).toContain('Natural binary cannot be compared');
  });
});
