import { drawDisc, type DiscPlan } from '../../disc/index.ts';
import { element, type Markup } from '../../report/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { svgPen } from './svgPen.ts';

/** Clear paper round the disc. [mm] */
const MARGIN_MM = 2;

/** Width of a drawn line; a cutter follows its middle. [mm] */
const LINE_MM = 0.1;

/** What the picture shows, for someone who cannot see it. */
function describe({ code, spec }: DiscPlan): Markup[] {
  const use = {
    fdm: 'The line is the outline of the part.',
    laser: 'The line is the path of the cut, without allowance for the width of the cut.',
    film: 'Black stops the light. Print at 100 %, never to fit the page, and cut along the outer edge.',
    'colour-print': 'Print at 100 %, never to fit the page, and cut along the outer edge.',
    pcb: 'Copper is filled; the board is milled along the line.',
  }[spec.process.kind];
  const what = `${code.family} code of ${code.positions} positions on ${code.tracks.length} tracks, diameter ${showMm(spec.diameterMm)}`;
  return [
    element(
      'title',
      { id: 'disc-title' },
      `Coded disc: ${code.positions} positions, ${showMm(spec.diameterMm)}`,
    ),
    element(
      'desc',
      { id: 'disc-desc' },
      `${what}. Drawn in true millimetres, seen from the patterned face, disc angle 0 straight up, growing clockwise. ${use}`,
    ),
  ];
}

/** The edge to cut a film along where dark print does not reach it; drawn outside the disc, so it darkens nothing. */
function trimLine({ spec }: DiscPlan): Markup[] {
  if (spec.process.kind !== 'film' || spec.rimMm > 0) return [];
  const r = showNumber(spec.diameterMm / 2 + LINE_MM / 2, 5);
  return [element('circle', { id: 'trim', r, fill: 'none', stroke: '#000', 'stroke-width': LINE_MM })];
}

/**
 * The disc as an SVG drawing in true millimetres, with true arcs.
 *
 * Film shows its dark print filled; a part to be printed or cut shows its outlines. Seen from the patterned face.
 *
 * @param plan - A disc plan.
 * @returns The whole file; equal plans give equal bytes.
 * @check test/journeys/discFiles.test.ts (read back by separate code, decoded every 0.1 degrees)
 */
export function discSvg(plan: DiscPlan): string {
  const { pen, pathData } = svgPen();
  drawDisc(plan, pen);
  const half = plan.spec.diameterMm / 2 + MARGIN_MM;
  const size = showNumber(2 * half, 5);
  const corner = showNumber(-half, 5);
  const paint =
    plan.spec.process.kind === 'film'
      ? { fill: '#000', 'fill-rule': 'evenodd' }
      : { fill: 'none', stroke: '#000', 'stroke-width': LINE_MM };
  const drawing = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${size}mm`,
      height: `${size}mm`,
      viewBox: `${corner} ${corner} ${size} ${size}`,
      role: 'img',
      'aria-labelledby': 'disc-title disc-desc',
    },
    ...describe(plan),
    element('path', { id: 'disc', d: pathData(), ...paint }),
    ...trimLine(plan),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${drawing.html}\n`;
}
