import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD } from '../../../../test/support/handHead.ts';
import { prove } from '../prove.ts';
import { virtualBuilds } from '../builds/virtualBuilds.ts';
import { exactTurn, nightErrors } from './exactTurn.ts';

const NEED = {
  positions: 32,
  accuracyDeg: 8,
  turnRateDegPerS: 30,
  turnRangeDeg: 360,
  mustSurvivePowerLoss: true,
  wantedYield: 0.95,
};
const disc = handDisc({ process: { edgeSdMm: 0.05 } });
const request = { builds: 256, seed: 1, accuracyDeg: NEED.accuracyDeg };

/** Low enough for a linear detector to stay linear in daylight too: its thresholds then lie at half light. */
function headIn(daylightShare: number, emitters: 'steady' | 'pulsed' = 'steady') {
  return handHead(disc, { spec: { daylightShare }, circuit: { resistorOhm: 3_000, emitters } });
}

describe('daylight that comes and goes', () => {
  it('is judged at night too: thresholds half way at noon stand past a whole window at night', () => {
    // At noon dark is 0.6 and lit 1.6 of a window's light, half way 1.1; at night no window gives more than 1.
    const head = headIn(0.6);
    expect(exactTurn(head).errors.unseenPositions).toEqual([]);
    expect(nightErrors(head)!.unseenPositions.length).toBeGreaterThan(0);
    expect(virtualBuilds(head, request).yield.value).toBe(0);
    const { verdict, reasons } = prove({ instrument: { need: NEED }, disc, head, builds: 64, seed: 1 });
    expect(verdict).toBe('no');
    expect(reasons.join(' ')).toMatch(/daylight of 60 %/);
  });

  it.each([0.05, 0.2, 0.35])('moves every edge at night by its share of the spot: %f', (daylightShare) => {
    const head = headIn(daylightShare);
    const { widthMm } = LINEAR_HEAD.aperture as { widthMm: number };
    const [inner] = head.channels.map(({ radiusMm }) => radiusMm).sort((a, b) => a - b);
    // A window reads narrower by w·d at each of its ends; the innermost track shows it by most degrees.
    const movedDeg = (Math.asin((widthMm * daylightShare) / inner!) * 180) / Math.PI;
    const half = 180 / 32;
    expect(exactTurn(head).errors.maxDeg).toBeCloseTo(half, 2);
    expect(nightErrors(head)!.maxDeg).toBeCloseTo(half + movedDeg, 2);
  });

  it('leaves builds that bear it good, and costs those that do not', () => {
    const good = (share: number): number =>
      virtualBuilds(headIn(share), { ...request, accuracyDeg: 7.2 }).yield.value;
    expect(good(0.05)).toBe(1);
    expect(good(0.3)).toBeGreaterThan(good(0.45));
  });

  it('is nothing to lights that are pulsed', () => {
    expect(nightErrors(headIn(0.6, 'pulsed'))).toBeNull();
    expect(virtualBuilds(headIn(0.6, 'pulsed'), request)).toEqual(
      virtualBuilds(headIn(0, 'pulsed'), request),
    );
  });

  it('is mended by pulsing the lights, and the report says so', () => {
    const { changes } = prove({ instrument: { need: NEED }, disc, head: headIn(0.6), builds: 64, seed: 1 });
    const pulsed = changes.find(({ title }) => title === 'Pulse the lights and take daylight off')!;
    expect(pulsed.verdict).toBe('yes');
    expect(pulsed.edits).toEqual([{ path: ['circuit', 'emitters'], value: 'pulsed' }]);
    expect(changes.map(({ title }) => title)).toContain('Shut daylight out');
  });
});
