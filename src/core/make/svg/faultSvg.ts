import { boreCircleMm, drawDisc, type DiscPlan, type DiscSpec, type FaultPlace } from '../../disc/index.ts';
import { element, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import { svgPen } from './svgPen.ts';

/** What is wrong with a drawing, and where. */
export interface ShownFault {
  readonly what: string;
  readonly places: readonly FaultPlace[];
}

/** A disc or a strip with something wrong. */
export interface FaultyDrawing {
  readonly spec: DiscSpec;
  /** As far as it can be drawn; `null` leaves its bare circles. */
  readonly plan: DiscPlan | null;
  /** In the order of their numbers. */
  readonly faults: readonly ShownFault[];
}

/** Places marked of one fault; the words say how many more there are. */
const MARKED = 12;

const RING_MM = 2.5;
const TEXT_MM = 3;
const LINE_MM = 0.1;
const ROW_MM = 4.5;

/** Width of a letter of the words, on the wide side. [mm] */
const LETTER_MM = 0.6 * TEXT_MM;

/** Room that the words need. [mm] */
const WORDS_MM = 180;

const colour = '#a8481f';

function mark({ xMm, yMm }: FaultPlace, number: number): Markup {
  const [x, y] = [xMm, yMm === 0 ? 0 : -yMm];
  return element(
    'g',
    {},
    element('circle', { cx: x, cy: y, r: RING_MM, fill: 'none', stroke: colour, 'stroke-width': 0.4 }),
    element('text', { x: x + RING_MM, y: y - RING_MM, 'font-size': TEXT_MM, fill: colour }, String(number)),
  );
}

function legend({ what, places }: ShownFault, number: number): string {
  const named = places.slice(0, 3).map(({ text }) => text);
  const more = places.length > named.length ? ` and ${places.length - named.length} more` : '';
  return `${number}  ${what}${named.length > 0 ? ` At ${named.join('; ')}${more}.` : ''}`;
}

/** Words in lines of at most so many letters, all but the first set in. */
function broken(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= letters) lines[lines.length - 1] += ` ${word}`;
    else lines.push(line === undefined ? word : `\u00a0\u00a0\u00a0${word}`);
  }
  return lines;
}

/** Left and right end, and height above and below the origin, of what is drawn. [mm] */
function boundsOf({ spec, plan }: FaultyDrawing): {
  left: number;
  right: number;
  above: number;
  below: number;
} {
  if (!plan?.strip) {
    const half = Math.max(spec.diameterMm, spec.hubDiameterMm, boreCircleMm(spec.bore)) / 2;
    return { left: -half, right: half, above: half, below: half };
  }
  const { fromDeg, toDeg, mmPerDeg, heightMm } = plan.strip;
  return { left: fromDeg * mmPerDeg, right: toDeg * mmPerDeg, above: heightMm, below: 0 };
}

/** Rim, hub and bore as asked for, where the tracks have no room. */
function bareCircles({ diameterMm, hubDiameterMm, bore }: DiscSpec): Markup[] {
  const line = { fill: 'none', stroke: '#000', 'stroke-width': LINE_MM };
  const circles = [diameterMm, hubDiameterMm, boreCircleMm(bore)].map((across) =>
    element('circle', { r: across / 2, ...line }),
  );
  if (bore.shape !== 'd') return circles;
  // The flat as far as its bore is wide, wherever it was asked for.
  const half = bore.diameterMm / 2;
  return [...circles, element('path', { d: `M${-half} ${half - bore.acrossFlatMm}H${half}`, ...line })];
}

function outlines(plan: DiscPlan): Markup[] {
  const { pen, pathData } = svgPen();
  drawDisc(plan, pen);
  return [
    element('path', { id: 'disc', d: pathData(), fill: 'none', stroke: '#000', 'stroke-width': LINE_MM }),
  ];
}

/**
 * A drawing of a faulty disc or strip: every fault has a number, and a ring at each place where it shows.
 *
 * @returns The whole file.
 * @check src/core/make/svg/faultSvg.test.ts
 */
export function faultSvg(drawing: FaultyDrawing): string {
  const { spec, plan, faults } = drawing;
  const bounds = boundsOf(drawing);
  const [left, top] = [bounds.left - 2 * RING_MM, -bounds.above - 2 * RING_MM];
  const below = bounds.below + 2 * RING_MM;
  const wide = bounds.right - bounds.left + 4 * RING_MM;
  const width = Math.max(wide, WORDS_MM);
  const from = left - (width - wide) / 2;
  const lines = faults.flatMap((fault, index) => broken(legend(fault, index + 1), width / LETTER_MM));
  const rows = lines.map((line, row) =>
    element('text', { x: from, y: below + ROW_MM * (row + 1), 'font-size': TEXT_MM }, line),
  );
  const height = below - top + ROW_MM * (lines.length + 1);
  const count = `${faults.length} ${faults.length === 1 ? 'fault' : 'faults'}`;
  const picture = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${showNumber(width, 3)}mm`,
      height: `${showNumber(height, 3)}mm`,
      viewBox: [from, top, width, height].map((length) => showNumber(length, 3)).join(' '),
      'font-family': "ui-sans-serif, system-ui, 'DejaVu Sans', sans-serif",
      role: 'img',
    },
    element('title', {}, `What is wrong with this disc: ${count}`),
    ...(plan ? outlines(plan) : bareCircles(spec)),
    ...faults.flatMap(({ places }, index) => places.slice(0, MARKED).map((place) => mark(place, index + 1))),
    ...rows,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${picture.html}\n`;
}
