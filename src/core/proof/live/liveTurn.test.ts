import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { ReadStretch } from '../proof.ts';
import type { BuildFaults } from '../turn/conditions.ts';
import { exactTurn } from '../turn/exactTurn.ts';
import { liveTurn, type LiveFaults } from './liveTurn.ts';

/** Angle between two looks. [deg] */
const LOOK_DEG = 0.04;

/** Where the word changes over one turn, after a turn that lets every sensor and hysteresis settle. */
function changes(head: HeadPlan, faults: LiveFaults, way: 1 | -1, rateDegPerS = 0) {
  const turn = liveTurn(head, rateDegPerS === 0 ? { ...faults, slowness: 0 } : faults);
  const found: { atDeg: number; word: string; position: number | null }[] = [];
  const looks = 360 / LOOK_DEG;
  for (let look = 0; look < 2 * looks; look++) {
    const before = turn.word;
    turn.goOn(way * LOOK_DEG, rateDegPerS === 0 ? 1 : (1000 * LOOK_DEG) / rateDegPerS);
    const isSecond = look >= looks;
    if (turn.word !== before && isSecond)
      found.push({ atDeg: turn.angleDeg, word: turn.word, position: turn.position });
  }
  return found;
}

/** Where each stretch is entered. */
function entered(stretches: readonly ReadStretch[], way: 1 | -1) {
  const wide = stretches.filter(({ fromDeg, toDeg }) => toDeg - fromDeg > 3 * LOOK_DEG);
  return wide.map(({ fromDeg, toDeg, word, position }) => ({
    atDeg: way > 0 ? fromDeg : toDeg,
    word,
    position,
  }));
}

/** Every change that exactTurn tells is seen at its place. A look comes at most its own width late. */
function sameAsExact(head: HeadPlan, faults: BuildFaults, rateDegPerS = 0, withinDeg = 1.5 * LOOK_DEG): void {
  const exact = exactTurn(head, faults, rateDegPerS);
  for (const way of [1, -1] as const) {
    const seen = changes(head, faults, way, rateDegPerS);
    const told = entered(way > 0 ? exact.growing : exact.falling, way);
    expect(told.length).toBeGreaterThan(10);
    for (const { atDeg, word, position } of told) {
      const near = seen.find((change) => change.word === word && apartDeg(change.atDeg, atDeg) < withinDeg);
      expect(near, `${word} at ${atDeg}, way ${way}`).toBeDefined();
      expect(near!.position).toBe(position);
    }
  }
}

const five = [0.1, -0.2, 0.15, 0.05, -0.1];
const cases: readonly [string, BuildFaults][] = [
  ['nothing', {}],
  ['a bore off the middle', { boreMm: [0.4, -0.25] }],
  ['sensors off their places', { alongMm: five, acrossMm: [0.3, -0.3, 0.2, 0.1, -0.2] }],
  ['a lamp at half its light', { lamps: [1, 1, 0.5, 1, 1] }],
  ['a lamp too weak to be seen', { lamps: [1, 0.01, 1, 1, 1] }],
  ['daylight let in', { addedLight: 0.01 }],
  ['sensors that have drifted', { drift: 0.8 }],
  ['parts that differ', { parts: [1.3, 0.8, 1, 0.9, 1.1], resistors: [1.05, 1, 0.95, 1, 1] }],
  ['thresholds off their places', { thresholdCounts: [20, -15, 0, 10, -30] }],
];

describe('a build turned under a hand', () => {
  it.each(cases)('changes where the exact turn says, with a photoresistor: %s', (_, faults) => {
    const head = handHead(handDisc({ process: { windowGrowthMm: 0.2 } }), {
      spec: LOG_HEAD,
      circuit: { hysteresisCounts: 60 },
    });
    sameAsExact(head, faults);
  });

  it.each(cases)(
    'changes where the exact turn says, with a sensor to ground and windows of 0: %s',
    (_, faults) => {
      const head = handHead(handDisc({ family: 'natural-binary', windowLevel: 0 }), {
        spec: LINEAR_HEAD,
        circuit: { hysteresisCounts: 30, sensorTo: 'ground', resistorOhm: 5_000 },
      });
      sameAsExact(head, faults);
    },
  );

  it('comes late by the lag that the exact turn has at that speed', () => {
    const head = handHead(handDisc(), { spec: LOG_HEAD, circuit: { hysteresisCounts: 40 } });
    sameAsExact(head, {}, 60, 3 * LOOK_DEG);
  });

  it('shows the misread that natural binary has and reflected Gray has not, with one sensor off its place', () => {
    const faults = { alongMm: [0.6, 0, 0, 0, 0] };
    const worst = (family: string): number => {
      const turn = liveTurn(handHead(handDisc({ family })), { ...faults, slowness: 0 });
      let most = 0;
      for (let look = 0; look < 3600; look++) {
        turn.goOn(0.1, 1);
        const centre = ((turn.position ?? 0) + 0.5) * 11.25;
        most = Math.max(most, apartDeg(centre, turn.angleDeg));
      }
      return most;
    };
    expect(worst('natural-binary')).toBeGreaterThan(90);
    expect(worst('reflected-gray')).toBeLessThan(11.25);
  });

  it('follows a change of light with the time constant of its sensor', () => {
    const head = handHead(handDisc({ positions: 8 }), { spec: LOG_HEAD });
    const turn = liveTurn(head, {}, 0);
    const channel = turn.channels.findIndex((_, c) => turn.word[c] === '0');
    const before = turn.channels[channel]!.light;
    // Turned into the window at once, then held: 20 ms later 63 % of the conductance has come.
    const into = [...Array(360).keys()].find(
      (deg) => liveTurn(head, {}, deg).channels[channel]!.light > 0.999,
    )!;
    turn.goOn(into, 1e-9);
    turn.goOn(0, 20);
    const [lit, dark] = [1 / 2_000, 1 / 200_000];
    const floor = (2_000 / 200_000) ** (1 / 0.7);
    const conductance = dark + (lit - dark) * (1 - Math.exp(-1));
    const light = ((1 / (conductance * 2_000)) ** (-1 / 0.7) - floor) / (1 - floor);
    expect(before).toBeLessThan(0.01);
    expect(turn.channels[channel]!.light).toBeCloseTo(light, 3);
  });

  it('says nothing, or the sign of a fault, but never stops on a dead lamp, a flood of light or a tear of the hand', () => {
    const head = handHead(handDisc(), { spec: LOG_HEAD });
    for (const faults of [{ lamps: [1e-9, 1, 1, 1, 1] }, { addedLight: 50 }, { slowness: 1000 }]) {
      const turn = liveTurn(head, faults);
      for (const by of [350, -720, 0, 1e-6]) turn.goOn(by, 16);
      expect(turn.word).toMatch(/^[01]{5}$/);
      for (const { light, counts } of turn.channels) {
        expect(Number.isFinite(light)).toBe(true);
        expect(counts[0]).toBeGreaterThanOrEqual(0);
        expect(counts[0]).toBeLessThanOrEqual(1024);
      }
    }
  });
});
