import {
  bottomAxis,
  element,
  label,
  leftAxis,
  look,
  picture,
  plotFrame,
  polyline,
  ticksBetween,
  type Markup,
  type PlotBox,
} from '../../report/index.ts';
import { weibullShareBelow } from '../../wind/index.ts';
import { CLASS_M_PER_S, type Distribution } from '../figures/distribution.ts';

const BOX: PlotBox = { left: 64, top: 34, width: 640, height: 220 };
/** Steps of the fitted line in each class. [-] */
const FINE = 4;

/** Ten-minute means by class of 1 m/s, with the fitted distribution over them. */
export function distributionPicture({ shares, weibull }: Distribution): Markup {
  const classes = Math.max(4, shares.length + 1);
  const fit = 'why' in weibull ? null : weibull;
  /** Share that the fit puts in a class's width about a speed; its calms are beside it. */
  const fitted = (speed: number): number =>
    fit === null
      ? 0
      : (1 - fit.calmShare) *
        (weibullShareBelow(fit, speed + CLASS_M_PER_S / 2) -
          weibullShareBelow(fit, Math.max(0, speed - CLASS_M_PER_S / 2)));
  const line = Array.from({ length: classes * FINE - FINE / 2 }, (_, i) => 0.5 + i / FINE).map(
    (speed): [number, number] => [speed, fitted(speed)],
  );
  const most = 1.08 * Math.max(0.01, ...shares, ...line.map(([, share]) => share));
  const x = (speed: number): number => BOX.left + (speed / classes) * BOX.width;
  const y = (share: number): number => BOX.top + BOX.height * (1 - share / most);
  return picture(
    { width: 740, height: 300, title: 'Ten-minute mean speeds: how often each class of 1 m/s occurs' },
    label('share of ten-minute periods', { x: BOX.left, y: BOX.top - 10 }),
    plotFrame(BOX),
    ...shares.map((share, i) =>
      element('rect', {
        x: x(i) + 1,
        y: y(share),
        width: x(1) - x(0) - 2,
        height: BOX.top + BOX.height - y(share),
        fill: look.material,
      }),
    ),
    ...(fit === null
      ? []
      : [
          polyline(
            line.map(([speed, share]) => [x(speed), y(share)] as const),
            { stroke: look.accent, 'stroke-width': 2 },
          ),
          label(
            'line: Weibull distribution fitted to them',
            { x: BOX.left + BOX.width, y: BOX.top - 10 },
            { fill: look.accent, 'text-anchor': 'end' },
          ),
        ]),
    bottomAxis(BOX, ticksBetween(0, classes, 12), x, { unit: '', title: 'ten-minute mean speed [m/s]' }),
    leftAxis(BOX, ticksBetween(0, 100 * most, 5), (tick) => y(tick / 100), ' %'),
  );
}
