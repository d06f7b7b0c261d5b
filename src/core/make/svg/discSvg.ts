import { discLayers, drawnOf, formOf, type DiscLayer, type DiscPlan } from '../../disc/index.ts';
import { element, type Attribute, type Markup } from '../../report/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { svgPen } from './svgPen.ts';

/** Clear paper round the disc. [mm] */
const MARGIN_MM = 2;

/** Width of a drawn line; a cutter follows its middle. [mm] */
const LINE_MM = 0.1;

/** What to do with the drawing. */
function useText({ spec }: DiscPlan): string {
  const form = formOf(spec);
  const allowance = drawnOf(spec).edgeLossMm;
  if (form.kind === 'overlay') {
    const what = form.colours ? 'Each colour is a level.' : 'Black stops the light.';
    return `${what} Print at 100 %, never to fit the page, and cut along the outer edge.`;
  }
  if (form.kind === 'copper') return 'Copper is filled; the board is milled along the line.';
  if (form.kind === 'inlay') return 'Each colour is a material of its own.';
  if (spec.process.kind === 'fdm') return 'The line is the outline of the part.';
  const width = 'for the width of the cut';
  if (allowance === 0) return `The line is the path of the cut, without allowance ${width}.`;
  return `The line is the path of the cut, drawn ${showMm(allowance)} outside the part to allow ${width}.`;
}

function outlineText({ spec, strip }: DiscPlan): string {
  if (!strip) return `diameter ${showMm(spec.diameterMm)}`;
  return `strip of ${showMm(360 * strip.mmPerDeg)} for one turn`;
}

/** What the picture shows, for someone who cannot see it. */
function describe(plan: DiscPlan): Markup[] {
  const { code, spec, strip } = plan;
  const what = `${code.family} code of ${code.positions} positions on ${code.tracks.length} tracks, ${outlineText(plan)}`;
  const way = strip
    ? 'disc angle 0 at x = 0, growing to the right'
    : 'disc angle 0 straight up, growing clockwise';
  const size = showMm(strip ? (strip.toDeg - strip.fromDeg) * strip.mmPerDeg : spec.diameterMm);
  return [
    element(
      'title',
      { id: 'disc-title' },
      `Coded ${strip ? 'strip' : 'disc'}: ${code.positions} positions, ${size}`,
    ),
    element(
      'desc',
      { id: 'disc-desc' },
      `${what}. Drawn in true millimetres, seen from the patterned face, ${way}. ${useText(plan)}`,
    ),
  ];
}

const isFilled = ({ fill }: DiscLayer): boolean => fill !== null;

/** Layers as they are drawn: beside a print, the line to cut along lies just outside, so that it darkens nothing. */
function shownLayers(plan: DiscPlan): DiscLayer[] {
  const layers = discLayers(plan);
  if (!layers.some(isFilled)) return layers;
  const drawn = drawnOf(plan.spec);
  const outside = { ...drawn, edgeLossMm: drawn.edgeLossMm + LINE_MM / 2 };
  const around = discLayers({ ...plan, spec: { ...plan.spec, drawn: outside } });
  return layers.map((layer, index) => (isFilled(layer) ? layer : around[index]!));
}

function layerGroup(layer: DiscLayer): Markup {
  const { pen, pathData } = svgPen();
  layer.draw(pen);
  const id = !layer.isPattern
    ? `${layer.name}-path`
    : layer.level === null
      ? 'disc'
      : `disc-level-${layer.level}`;
  const paint: Record<string, Attribute> =
    layer.fill === null
      ? { fill: 'none', stroke: '#000', 'stroke-width': LINE_MM }
      : { fill: layer.fill === '#000000' ? '#000' : layer.fill, 'fill-rule': 'evenodd' };
  return element('g', { id: layer.name }, element('path', { id, d: pathData(), ...paint }));
}

/** Corner and size of the paper, y down. [mm] */
function paperOf({ spec, strip }: DiscPlan): { left: number; top: number; width: number; height: number } {
  const { scale } = drawnOf(spec);
  if (!strip) {
    const half = (scale * spec.diameterMm) / 2 + MARGIN_MM;
    return { left: -half, top: -half, width: 2 * half, height: 2 * half };
  }
  const { fromDeg, toDeg, mmPerDeg, heightMm } = strip;
  return {
    left: scale * fromDeg * mmPerDeg - MARGIN_MM,
    top: -scale * heightMm - MARGIN_MM,
    width: scale * (toDeg - fromDeg) * mmPerDeg + 2 * MARGIN_MM,
    height: scale * heightMm + 2 * MARGIN_MM,
  };
}

/**
 * The disc as an SVG drawing in true millimetres, with true arcs, one group for each thing that is done.
 *
 * Prints and copper are filled; a part to be printed or cut shows its outlines. Seen from the patterned face.
 *
 * @param plan - A disc plan.
 * @returns The whole file; equal plans give equal bytes.
 * @check test/journeys/discFiles.test.ts (read back by separate code, decoded every 0.1 degrees)
 */
export function discSvg(plan: DiscPlan): string {
  const { left, top, width, height } = paperOf(plan);
  const size = (length: number): string => showNumber(length, 5);
  const drawing = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${size(width)}mm`,
      height: `${size(height)}mm`,
      viewBox: [left, top, width, height].map(size).join(' '),
      role: 'img',
      'aria-labelledby': 'disc-title disc-desc',
    },
    ...describe(plan),
    ...shownLayers(plan).map(layerGroup),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${drawing.html}\n`;
}
