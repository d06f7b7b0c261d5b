import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { lightLevel, signalOf } from '../../head/index.ts';
import { exactTurn } from './exactTurn.ts';
import { laggedSwitches } from './laggedSwitches.ts';
import { turnModel } from './turnModel.ts';

const disc = handDisc({ positions: 8, firstRadiusMm: 18 });
const aperture = { shape: 'slit', widthMm: 1.2, lengthMm: 2 } as const;

/** Switches found by following the sensor in steps of a ten-thousandth of a turn, by Euler's rule. */
function byTimeSteps(
  detector: typeof LOG_HEAD.detector,
  track: number,
  rate: number,
  sense: 'growing' | 'falling',
) {
  const head = handHead(disc, { spec: { detector, aperture }, circuit: { hysteresisCounts: 30 } });
  const { seen } = turnModel(head).channels[track]!;
  const signal = signalOf(detector, head.levels.resistorOhm, 'supply', head.board);
  const steps = 400_000;
  const way = sense === 'growing' ? 1 : -1;
  const dt = 360 / rate / steps;
  const upper = signal.drive(head.levels.risingLight);
  const lower = signal.drive(head.levels.fallingLight);
  let value = signal.drive(0);
  let lit = false;
  const found: { at: number; lit: boolean }[] = [];
  for (let step = 0; step < 2 * steps; step++) {
    const angle = (way * (step % steps) * 360) / steps;
    const goal = signal.drive(lightLevel(seen, angle));
    const tau = (goal > value ? detector.riseMs : detector.fallMs) / 1000;
    value += tau > dt ? ((goal - value) * dt) / tau : goal - value;
    const changed = lit ? value <= lower : value >= upper;
    if (!changed) continue;
    lit = !lit;
    if (step >= steps) found.push({ at: angle, lit: lit === way > 0 });
  }
  return { found, head, seen, signal };
}

describe('a turn at speed', () => {
  it.each([
    ['a photoresistor', LOG_HEAD.detector, 120],
    ['a photoresistor', LOG_HEAD.detector, 500],
    ['a phototransistor of 3 ms', { ...LINEAR_HEAD.detector, riseMs: 3, fallMs: 3 }, 300],
  ] as const)('switches %s where small steps of time say (%o at %i deg/s)', (_, detector, rate) => {
    for (const sense of ['growing', 'falling'] as const) {
      const { found, head, seen, signal } = byTimeSteps(detector, 1, rate, sense);
      const following = {
        rateDegPerS: rate,
        riseMs: detector.riseMs,
        fallMs: detector.fallMs,
        drive: signal.drive,
      };
      const { switches } = laggedSwitches(seen, head.levels, sense, following);
      expect(switches.length).toBe(found.length);
      for (const { at, lit } of found) {
        const same = switches.filter(({ litAfter }) => litAfter === lit);
        expect(Math.min(...same.map(({ atDeg }) => apartDeg(atDeg, at)))).toBeLessThan(0.05);
      }
    }
  });

  it('comes late by rate times time constant where a linear sensor follows a slow ramp', () => {
    const tauMs = 4;
    const detector = { ...LINEAR_HEAD.detector, riseMs: tauMs, fallMs: tauMs };
    const head = handHead(disc, { spec: { detector, aperture: { shape: 'slit', widthMm: 4, lengthMm: 2 } } });
    const [still, moving] = [exactTurn(head), exactTurn(head, {}, 30)];
    for (const [i, { fromDeg }] of still.growing.entries()) {
      const late = apartDeg(moving.growing[i]!.fromDeg, fromDeg);
      expect(Math.abs(late - (30 * tauMs) / 1000)).toBeLessThan(2e-3);
    }
  });

  it('is the slow turn where the shaft hardly moves', () => {
    const head = handHead(disc, { spec: { ...LOG_HEAD, aperture } });
    const [still, slow] = [exactTurn(head), exactTurn(head, {}, 0.01)];
    expect(slow.growing.length).toBe(still.growing.length);
    for (const way of ['growing', 'falling'] as const) {
      for (const { fromDeg } of still[way]) {
        const nearest = Math.min(...slow[way].map((other) => apartDeg(other.fromDeg, fromDeg)));
        expect(nearest).toBeLessThan(0.03);
      }
    }
  });

  it('loses positions when the shaft turns too fast for the sensor', () => {
    const head = handHead(handDisc({ positions: 32, firstRadiusMm: 18 }), {
      spec: { ...LOG_HEAD, aperture },
    });
    expect(exactTurn(head, {}, 20).errors.unseenPositions).toEqual([]);
    expect(exactTurn(head, {}, 3_000).errors.unseenPositions.length).toBeGreaterThan(0);
  });
});
