import { element, label, look, picture, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import type { CupCalibration } from '../../wind/index.ts';

const WIDTH = 460;
const HEIGHT = 220;
const LEFT = 52;
const MIDDLE = 104;

/**
 * What each point stands off the fitted line, over the rate of its pulses.
 *
 * @param rates - Rates of the points that turned, in the order of the fit. [Hz]
 */
export function residualPlot({ line, scatterMPerS }: CupCalibration, rates: readonly number[]): Markup {
  const turning = rates.filter((rate) => rate > 0);
  const most = Math.max(...line.residuals.map(Math.abs), scatterMPerS, 1e-9);
  const [low, high] = [Math.min(...turning), Math.max(...turning)];
  const x = (rate: number): number =>
    LEFT + ((WIDTH - LEFT - 16) * (rate - low)) / Math.max(1e-9, high - low);
  const y = (residual: number): number => MIDDLE - (80 * residual) / most;
  return picture(
    {
      width: WIDTH,
      height: HEIGHT,
      title: 'What each point stands off the fitted line, over the rate of the pulses.',
    },
    element('rect', {
      x: LEFT,
      y: y(scatterMPerS),
      width: WIDTH - LEFT - 16,
      height: y(-scatterMPerS) - y(scatterMPerS),
      fill: look.accentTint,
    }),
    element('line', { x1: LEFT, x2: WIDTH - 16, y1: MIDDLE, y2: MIDDLE, stroke: look.ink }),
    ...turning.map((rate, i) =>
      element('circle', { cx: x(rate), cy: y(line.residuals[i]!), r: 3.5, fill: look.accent }),
    ),
    label(`${showNumber(most, 2)} m/s`, { x: 4, y: 30 }, { fill: look.faintInk, 'font-size': 10 }),
    label(`-${showNumber(most, 2)} m/s`, { x: 4, y: 188 }, { fill: look.faintInk, 'font-size': 10 }),
    label(`${showNumber(low, 1)} Hz`, { x: LEFT, y: HEIGHT - 8 }, { fill: look.faintInk }),
    label(`${showNumber(high, 1)} Hz`, { x: WIDTH - 56, y: HEIGHT - 8 }, { fill: look.faintInk }),
  );
}
