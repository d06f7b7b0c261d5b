import { drawDisc, type DiscPlan, type FaultPlace } from '../../disc/index.ts';
import { element, type Markup } from '../../report/index.ts';
import { degToRad, showDegrees, showMm, showNumber } from '../../units/index.ts';
import { svgPen } from './svgPen.ts';

/** What is wrong with a drawing, and where. */
export interface ShownFault {
  readonly what: string;
  readonly places: readonly FaultPlace[];
}

/** Places marked of one fault; the words say how many more there are. */
const MARKED = 12;

const RING_MM = 2.5;
const TEXT_MM = 3;
const LINE_MM = 0.1;
const ROW_MM = 4.5;

const colour = '#a8481f';

function mark({ radiusMm, angleDeg }: FaultPlace, number: number): Markup {
  const [x, y] = [radiusMm * Math.sin(degToRad(angleDeg)), -radiusMm * Math.cos(degToRad(angleDeg))];
  return element(
    'g',
    {},
    element('circle', { cx: x, cy: y, r: RING_MM, fill: 'none', stroke: colour, 'stroke-width': 0.4 }),
    element('text', { x: x + RING_MM, y: y - RING_MM, 'font-size': TEXT_MM, fill: colour }, String(number)),
  );
}

function legend({ what, places }: ShownFault, number: number): string {
  const named = places
    .slice(0, 3)
    .map((place) => `${showMm(place.radiusMm)} at ${showDegrees(place.angleDeg)}`);
  const more = places.length > named.length ? ` and ${places.length - named.length} more` : '';
  return `${number}  ${what}${named.length > 0 ? ` Radius ${named.join(', ')}${more}.` : ''}`;
}

/**
 * A drawing of a faulty disc: every fault has a number, and a ring at each place where it shows.
 *
 * @param plan - The disc as far as it can be drawn; `null` leaves only the words.
 * @param faults - In the order of their numbers.
 * @returns The whole file.
 * @check src/core/make/svg/faultSvg.test.ts
 */
export function faultSvg(plan: DiscPlan | null, faults: readonly ShownFault[]): string {
  const half = plan ? plan.spec.diameterMm / 2 + 2 * RING_MM : 0;
  const width = Math.max(2 * half, 180);
  const { pen, pathData } = svgPen();
  if (plan && !plan.strip) drawDisc(plan, pen);
  const rows = faults.map((fault, index) =>
    element(
      'text',
      { x: -width / 2, y: half + ROW_MM * (index + 1), 'font-size': TEXT_MM },
      legend(fault, index + 1),
    ),
  );
  const marks = plan?.strip
    ? []
    : faults.flatMap(({ places }, index) => places.slice(0, MARKED).map((place) => mark(place, index + 1)));
  const height = 2 * half + ROW_MM * (faults.length + 1);
  const drawing = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${showNumber(width, 3)}mm`,
      height: `${showNumber(height, 3)}mm`,
      viewBox: `${showNumber(-width / 2, 3)} ${showNumber(-half, 3)} ${showNumber(width, 3)} ${showNumber(height, 3)}`,
      'font-family': "ui-sans-serif, system-ui, 'DejaVu Sans', sans-serif",
      role: 'img',
    },
    element(
      'title',
      {},
      `What is wrong with this disc: ${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}`,
    ),
    ...(plan
      ? [
          element('path', {
            id: 'disc',
            d: pathData(),
            fill: 'none',
            stroke: '#000',
            'stroke-width': LINE_MM,
          }),
        ]
      : []),
    ...(plan ? marks : []),
    ...rows,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${drawing.html}\n`;
}
