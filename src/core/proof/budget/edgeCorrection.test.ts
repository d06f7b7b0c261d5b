import { describe, expect, it } from 'vitest';
import { handHead, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { buildCode } from '../../codes/index.ts';
import { planDisc, processDefaults, type DiscSpec } from '../../disc/index.ts';
import { exactTurn } from '../turn/exactTurn.ts';
import { correctedDisc } from './edgeCorrection.ts';
import { switchPlaces } from './switchShifts.ts';

const SPEC: DiscSpec = {
  code: 'reflected-gray',
  codeFile: null,
  codeOptions: {},
  diameterMm: 90,
  bore: { shape: 'round', diameterMm: 5 },
  hubDiameterMm: 34,
  thicknessMm: 2,
  webMm: 1.2,
  rimMm: 2.4,
  finest: 'outside',
  windowLevel: 1,
  notch: { widthMm: 0, depthMm: 0 },
  process: processDefaults.fdm,
};
const code = buildCode('reflected-gray', 32);
const want = { spec: LOG_HEAD, circuit: { hysteresisCounts: 0 } };

describe('edges drawn for a photoresistor', () => {
  it.each(['slit', 'gaussian'] as const)('put every step where it is meant to be, with a %s', (shape) => {
    const aperture =
      shape === 'slit'
        ? ({ shape, widthMm: 1.5, lengthMm: 2 } as const)
        : ({ shape, radiusMm: 0.6 } as const);
    const spec = { ...LOG_HEAD, aperture };
    const plain = handHead(planDisc(code, SPEC), { ...want, spec });
    const corrected = handHead(planDisc(code, correctedDisc(plain)), { ...want, spec });
    const half = 5.625;
    const before = exactTurn(plain).errors.maxDeg! - half;
    const after = exactTurn(corrected).errors.maxDeg! - half;
    expect(before).toBeGreaterThan(0.5);
    // What is left is the turn of a straight edge against radii that differ.
    expect(after).toBeLessThan(0.03 * before);
  });

  it('move by the known bias of a beam: 0.9 of its radius an edge for a ratio of 100 and gamma 0.7', () => {
    const spec = { ...LOG_HEAD, aperture: { shape: 'gaussian', radiusMm: 0.6 } as const };
    const head = handHead(planDisc(code, SPEC), { ...want, spec });
    expect(switchPlaces(head, 30).biasMm / 0.6).toBeCloseTo(0.9, 2);
    const { drawn, process } = correctedDisc(head);
    expect(process.windowGrowthMm).toBeCloseTo(-2 * 0.9 * 0.6, 2);
    expect(drawn!.edgeLossMm).toBeCloseTo(0.9 * 0.6 - 0.1, 2);
  });
});
