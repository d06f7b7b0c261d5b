import { describe, expect, it } from 'vitest';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { buildCode } from '../../codes/index.ts';
import { planDisc, processDefaults, type DiscSpec } from '../../disc/index.ts';
import { virtualBuilds } from '../builds/virtualBuilds.ts';
import { candidates } from './candidates.ts';
import { usefulChanges } from './usefulChanges.ts';

const SPEC: DiscSpec = {
  code: 'reflected-gray',
  codeFile: null,
  codeOptions: {},
  diameterMm: 84,
  bore: { shape: 'round', diameterMm: 5 },
  hubDiameterMm: 30,
  thicknessMm: 2,
  webMm: 1.2,
  rimMm: 2.4,
  finest: 'outside',
  windowLevel: 1,
  notch: { widthMm: 2, depthMm: 1.2 },
  process: processDefaults.fdm,
};
const NEED = {
  positions: 32,
  accuracyDeg: 10,
  turnRateDegPerS: 60,
  turnRangeDeg: 360,
  mustSurvivePowerLoss: true,
  wantedYield: 0.95,
};

function changesOf(disc: Partial<DiscSpec>, need: Partial<typeof NEED> = {}) {
  const spec = { ...SPEC, ...disc };
  const head = handHead(planDisc(buildCode(spec.code, 32), spec), {
    spec: {
      ...LOG_HEAD,
      tangentialSdMm: 0.2,
      radialSdMm: 0.2,
      aperture: { shape: 'slit', widthMm: 1.2, lengthMm: 2 },
    },
    circuit: { hysteresisCounts: null, noiseCounts: 1 },
  });
  const asked = { ...NEED, ...need };
  const request = { builds: 256, seed: 1, accuracyDeg: asked.accuracyDeg };
  const own = virtualBuilds(head, request);
  return { own, changes: usefulChanges(head, asked, request, own) };
}

describe('the most useful changes', () => {
  it('are tried with the daylight and the leak that there are, not twice as much', () => {
    const spec = { ...LINEAR_HEAD, daylightShare: 0.2, leak: { transmittedShare: 0.05, measuredMm: 2 } };
    const head = handHead(planDisc(buildCode('reflected-gray', 32), SPEC), { spec });
    const narrowed = candidates(head, NEED)
      .find(({ title }) => title === 'Narrow the spot')!
      .plan();
    expect(narrowed.levels).toEqual(head.levels);
    expect(narrowed.spec.detector).toEqual(head.spec.detector);
  });

  it('turn natural binary into a code that changes one channel a step', () => {
    const { changes } = changesOf({ code: 'natural-binary' });
    expect(changes[0]!.how).toContain('reflected-gray');
    expect(changes[0]!.verdict).toBe('yes');
  });

  it('are at most three, each better than the design, best first', () => {
    const { own, changes } = changesOf({ process: { ...processDefaults.fdm, boreSdMm: 0.6 } });
    expect(changes).toHaveLength(3);
    expect(changes[0]!.verdict).toBe('yes');
    for (const change of changes) {
      expect(change.yield.value).toBeGreaterThanOrEqual(own.yield.value);
      expect(change.p95Deg).toBeLessThanOrEqual(own.maxErrorDeg.p95);
    }
    const yields = changes.map((change) => change.yield.value);
    expect(yields).toEqual([...yields].sort((a, b) => b - a));
  });

  it('speed up a sensor that is too slow', () => {
    const { changes } = changesOf({}, { turnRateDegPerS: 400 });
    expect(changes[0]!.title).toBe('Use a sensor that is linear and quick');
    expect(changes[0]!.limitDegPerS).toBeGreaterThan(400);
    expect(changes[0]!.verdict).toBe('yes');
  });

  it('ask for more steps where half a step is more than is accepted', () => {
    const { changes } = changesOf({ diameterMm: 240, hubDiameterMm: 130 }, { accuracyDeg: 5 });
    expect(changes.map(({ how }) => how).join(' ')).toContain('need.positions');
  });
});
