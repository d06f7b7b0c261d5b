import { describe, expect, it } from 'vitest';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import { blocksOf, bounceOf, fittedCups, pulsesPerTurn, residualPlot } from '../index.ts';

describe('pulses a turn', () => {
  it('come from turning by hand, and are whole', () => {
    expect(pulsesPerTurn(20, 10, 40).pulsesPerTurn).toBe(2);
    expect(pulsesPerTurn(21, 10, null).pulsesPerTurn).toBe(2);
    expect(pulsesPerTurn(40, 10, 42).cautions[0]).toMatch(/twice the speed/);
  });

  it('are refused when they cannot be told', () => {
    expect(() => pulsesPerTurn(2, 2, null)).toThrow('fit/too-few-turns');
    expect(() => pulsesPerTurn(15, 10, null)).toThrow('fit/pulses-not-whole');
    expect(() => pulsesPerTurn(0, 10, null)).toThrow('fit/pulses-not-whole');
  });
});

/** Edges of a reed that opens and closes at a rate, each edge bouncing for a while. */
function edges(hz: number, turns: number, bounceUs: number, seed: number): number[] {
  const random = draws(seed);
  const times: number[] = [];
  for (let i = 0; i < 2 * turns; i++) {
    const at = ((i + 0.2 * random()) * 1e6) / hz / 2;
    times.push(at);
    for (let left = at + bounceUs * random(); left < at + bounceUs; left += 0.3 * bounceUs * random() + 20)
      times.push(left);
  }
  return times;
}

describe('bounce', () => {
  it('is parted from real pulses, and the quiet time hides all of it', () => {
    for (const seed of [1, 2, 3, 4]) {
      const found = bounceOf(edges(10, 40, 600, seed));
      expect(found.longestBounceUs).toBeLessThan(600);
      expect(found.quietUs).toBeGreaterThan(found.longestBounceUs);
      expect(found.quietUs).toBeLessThan(2000);
      expect(found.shortestRealUs).toBeGreaterThan(35_000);
      expect(found.histogram.reduce((sum, { gaps }) => sum + gaps, 0)).toBe(
        edges(10, 40, 600, seed).length - 1,
      );
    }
  });

  it('has the published highest rate: 1 ms of bounce and 1.5 ms of quiet are 200 Hz', () => {
    const { longestBounceUs, quietUs, mostHz } = bounceOf(edges(5, 40, 500, 9));
    expect(mostHz).toBeCloseTo(1e6 / (2 * (longestBounceUs + quietUs)), 9);
    expect(1e6 / (2 * (1000 + 1500))).toBe(200);
  });

  it('goes on over the end of the clock', () => {
    const end = 4_294_967_296;
    const times = edges(10, 40, 600, 1);
    const wrapped = times.map((time) => (time + end - 1_000_000) % end);
    expect(bounceOf(wrapped).quietUs).toBe(bounceOf(times).quietUs);
  });

  it('is refused when nothing parts it from pulses, or there are too few edges', () => {
    const random = draws(3);
    let at = 0;
    const even = Array.from({ length: 200 }, () => (at += 500 * 20 ** random()));
    expect(() => bounceOf(even)).toThrow('fit/bounce-not-apart');
    expect(() => bounceOf([1, 2, 3])).toThrow('fit/too-few-edges');
  });
});

/** A windy day: pulses and a reference by one clock. */
function day(hours: number, noise: number, seed: number, most = 12) {
  const random = draws(seed);
  let pulses = 0;
  const counted: { timeMs: number; value: number }[] = [];
  const reference: { timeMs: number; value: number }[] = [];
  for (let s = 0; s < hours * 3600; s += 10) {
    const speed = Math.max(0, most * (0.5 - 0.5 * Math.cos((2 * Math.PI * s) / 7200)));
    const rate = speed < 0.6 ? 0 : (speed - 0.25) / 0.75;
    pulses += 10 * rate;
    counted.push({ timeMs: 1000 * s, value: Math.floor(pulses) });
    reference.push({ timeMs: 1000 * s, value: Math.max(0, speed + noise * normal(random)) });
  }
  return { counted, reference };
}

describe('cups beside a reference', () => {
  it('have the line that made them, within its standard errors, and start where they do', () => {
    const { counted, reference } = day(10, 0.3, 1);
    const fit = fittedCups(blocksOf(counted, reference, 60_000));
    expect(Math.abs(fit.calibration.pathPerPulseM - 0.75)).toBeLessThan(4 * fit.pathErrorM + 0.002);
    expect(Math.abs(fit.calibration.offsetMPerS - 0.25)).toBeLessThan(4 * fit.offsetErrorMPerS + 0.02);
    expect(fit.startingMPerS.turnedIn).toBeGreaterThan(0.3);
    expect(fit.startingMPerS.turnedIn).toBeLessThan(1);
    const plot = residualPlot(
      fit.calibration,
      fit.blocks.map(({ rateHz }) => rateHz),
    );
    expect(plot.html.match(/<circle/g)).toHaveLength(fit.calibration.line.residuals.length);
  });

  it('are refused where the data cannot support a line', () => {
    const { counted, reference } = day(0.1, 0.1, 2);
    expect(() => fittedCups(blocksOf(counted, reference, 60_000))).toThrow('fit/too-few-blocks');
    const flat = Array.from({ length: 40 }, (_, i) => ({
      timeMs: i,
      rateHz: 5 + 0.1 * (i % 2),
      speedMPerS: 4 + 0.1 * (i % 3),
    }));
    expect(() => fittedCups(flat)).toThrow('fit/speeds-too-alike');
  });
});
