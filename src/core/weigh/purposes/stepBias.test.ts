import { describe, expect, it } from 'vitest';
import { draws, normal } from '../../../../test/support/handTurn.ts';
import { stepBiasDeg } from '../index.ts';

/** Error of the mean of quantised normal directions, summed over their density; the worst place of many. [deg] */
function summedBias(step: number, wobble: number): number {
  let worst = 0;
  for (let place = 0; place < 1; place += 0.02) {
    const mean = place * step;
    let [sum, weight] = [0, 0];
    for (let z = -6; z <= 6; z += 0.002) {
      const density = Math.exp(-(z ** 2) / 2);
      // Each reading is told as the middle of its step.
      sum += density * (Math.floor((mean + z * wobble) / step) + 0.5) * step;
      weight += density;
    }
    worst = Math.max(worst, Math.abs(sum / weight - mean));
  }
  return worst;
}

describe('what the steps leave in a mean', () => {
  it.each([
    [22.5, 7],
    [11.25, 3],
    [11.25, 2],
    [5, 1],
  ])('with steps of %s degrees and a wobble of %s is what summing over the wobble gives', (step, wobble) => {
    expect(Math.abs(stepBiasDeg(step, wobble) - summedBias(step, wobble))).toBeLessThan(0.01 * step);
  });

  it('is about a degree once the wind wobbles by 7 degrees with 16 positions, by 3 with 32', () => {
    // A rule of thumb of wind practice.
    expect(stepBiasDeg(22.5, 7)).toBeLessThan(1.1);
    expect(stepBiasDeg(11.25, 3)).toBeLessThan(1);
    expect(stepBiasDeg(11.25, 2)).toBeGreaterThan(1);
  });

  it('is half a step where nothing wobbles', () => {
    expect(stepBiasDeg(10, 0)).toBe(5);
    expect(stepBiasDeg(10, 0.01)).toBeGreaterThan(4.7);
  });

  it('is seen in a month of drawn readings too', () => {
    const random = draws(3);
    const [step, wobble, mean] = [22.5, 7, 22.5 / 4];
    let sum = 0;
    for (let i = 0; i < 40_000; i++)
      sum += (Math.floor((mean + wobble * normal(random)) / step) + 0.5) * step;
    // The saw-tooth is steepest a quarter of a step from an edge; its first term is at its worst there.
    expect(Math.abs(Math.abs(sum / 40_000 - mean) - stepBiasDeg(step, wobble))).toBeLessThan(0.25);
  });
});
