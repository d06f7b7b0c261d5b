import { describe, expect, it } from 'vitest';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import { carRun, trackFromPositions } from '../index.ts';

interface Ride {
  readonly pulses: { timeMs: number; value: number }[];
  readonly positions: { timeMs: number; latitudeDeg: number; longitudeDeg: number }[];
}

/** A car that drives out and back at several speeds on a straight road, in a steady wind; the logger's clock is 12.3 s behind. */
function ride(
  course: number,
  wind: { fromDeg: number; mPerS: number },
  ways: readonly (1 | -1)[],
  seed: number,
): Ride {
  const random = draws(seed);
  const legs = ways.flatMap((way) => [6, 10, 14, 18, 22].map((speed) => ({ way, speed })));
  let [north, east, now, count, t] = [0, 0, 0, 0, 0];
  const pulses: Ride['pulses'] = [];
  const positions: Ride['positions'] = [];
  const rad = Math.PI / 180;
  for (const { way, speed } of legs) {
    for (let s = 0; s < 45; s += 0.1) {
      // Brakes to a stand at the end of each leg, gathers speed at its beginning.
      const goal = s > 37 ? 0 : speed;
      now += Math.max(-0.3, Math.min(0.25, goal - now));
      const heading = way > 0 ? course : course + 180;
      const [vn, ve] = [now * Math.cos(heading * rad), now * Math.sin(heading * rad)];
      north += vn * 0.1;
      east += ve * 0.1;
      const air = Math.hypot(
        vn + wind.mPerS * Math.cos(wind.fromDeg * rad),
        ve + wind.mPerS * Math.sin(wind.fromDeg * rad),
      );
      count += air > 0.5 ? ((air - 0.25) / 0.75) * 0.1 : 0;
      t += 0.1;
      const step = Math.round(t * 10);
      if (step % 5 === 0) pulses.push({ timeMs: 1000 * t - 12_300, value: Math.floor(count) });
      if (step % 10 === 0) {
        positions.push({
          timeMs: 1000 * t,
          latitudeDeg: 53 + (north + 0.4 * normal(random)) / (6_371_000 * rad),
          longitudeDeg: 10 + (east + 0.4 * normal(random)) / (6_371_000 * rad * Math.cos(53 * rad)),
        });
      }
    }
  }
  return { pulses, positions };
}

describe('a car run', () => {
  it('aligns the clocks, drops turns and braking, and takes the wind over the road out of both ways', () => {
    for (const [course, from] of [
      [20, 30],
      [90, 300],
      [300, 120],
    ] as const) {
      const { pulses, positions } = ride(course, { fromDeg: from, mPerS: 3 }, [1, -1], course);
      const run = carRun(pulses, trackFromPositions(positions));
      expect(Math.abs(run.clockAddMs - 12_300)).toBeLessThan(1000);
      expect(Math.abs(run.calibration.pathPerPulseM / 0.75 - 1)).toBeLessThan(0.02);
      expect(Math.abs(run.calibration.offsetMPerS - 0.25)).toBeLessThan(0.25);
      expect(run.legs.length).toBeGreaterThanOrEqual(8);
      expect(run.droppedS).toBeGreaterThan(60);
      expect(run.cautions.join(' ')).toMatch(/faster around a car/);
    }
  });

  it('is refused one way only, too short, or beside another ride', () => {
    const wind = { fromDeg: 30, mPerS: 3 };
    const out = ride(20, wind, [1], 1);
    expect(() => carRun(out.pulses, trackFromPositions(out.positions))).toThrow('fit/one-way-only');
    const both = ride(20, wind, [1, -1], 2);
    const short = trackFromPositions(both.positions).slice(0, 60);
    expect(() => carRun(both.pulses.slice(0, 120), short)).toThrow('fit/too-few-legs');
    const random = draws(5);
    let count = 0;
    const other = both.pulses.map(({ timeMs }) => ({ timeMs, value: (count += random() < 0.5 ? 0 : 9) }));
    expect(() => carRun(other, trackFromPositions(both.positions))).toThrow('fit/clocks-not-aligned');
  });
});
