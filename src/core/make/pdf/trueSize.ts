import { discLayers, drawnOf, type DiscPlan, type Point } from '../../disc/index.ts';
import { drawingArea, type Area, type Paper } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';
import { tilingOf, type Tile, type Tiling } from './tiles.ts';

/** Name of the marked part of a page that shows the pattern at true size. */
export const PATTERN_MARK = 'Pattern';

/** Width of outlines at true size; a knife follows its middle. [mm] */
const LINE_MM = 0.1;

/** Clear paper round the drawing. [mm] */
const CLEAR_MM = 3;

/** Width, height and middle of a plan as drawn. [mm] */
export function extentOf({ spec, strip }: DiscPlan): { size: [number, number]; middle: [number, number] } {
  const { scale } = drawnOf(spec);
  if (!strip) {
    const across = scale * spec.diameterMm + 2 * CLEAR_MM;
    return { size: [across, across], middle: [0, 0] };
  }
  const { fromDeg, toDeg, mmPerDeg, heightMm } = strip;
  return {
    size: [scale * (toDeg - fromDeg) * mmPerDeg + 2 * CLEAR_MM, scale * heightMm + 2 * CLEAR_MM],
    middle: [(scale * (fromDeg + toDeg) * mmPerDeg) / 2, (scale * heightMm) / 2],
  };
}

/** The sheets that a plan at true size needs. */
export function trueSizeTiling(plan: DiscPlan, paper: Paper): Tiling {
  const { size, middle } = extentOf(plan);
  return tilingOf(size, middle, drawingArea(paper));
}

/** Draws every layer of a plan, prints and copper filled. */
export function drawLayers(
  page: SheetPage,
  plan: DiscPlan,
  place: { readonly at: Point; readonly within: Area; readonly scale?: number },
): void {
  for (const layer of discLayers(plan)) {
    const paint = layer.fill === null ? { lineMm: LINE_MM } : { fill: layer.fill };
    page.drawing(layer.isPattern ? PATTERN_MARK : layer.name, place, paint, layer.draw);
  }
}

/** Crosses at the corners of a sheet's area: they lie over each other where sheets are joined. */
function joiningCrosses(page: SheetPage, { xMm, yMm, widthMm, heightMm }: Area): void {
  for (const x of [xMm + 5, xMm + widthMm - 5]) {
    for (const y of [yMm + 5, yMm + heightMm - 5]) {
      page.line({ xMm: x - 4, yMm: y }, { xMm: x + 4, yMm: y });
      page.line({ xMm: x, yMm: y - 4 }, { xMm: x, yMm: y + 4 });
    }
  }
}

/** One sheet of the plan at true size. */
export function drawTile(page: SheetPage, plan: DiscPlan, paper: Paper, tile: Tile, isWhole: boolean): void {
  const area = drawingArea(paper);
  const at = {
    xMm: area.xMm + area.widthMm / 2 - tile.middle[0],
    yMm: area.yMm + area.heightMm / 2 - tile.middle[1],
  };
  drawLayers(page, plan, { at, within: area });
  if (isWhole) return;
  page.box(area);
  joiningCrosses(page, area);
  page.text(
    `row ${tile.row}, column ${tile.column}: lay the crosses of neighbouring sheets over each other`,
    { xMm: area.xMm + 12, yMm: area.yMm + 2 },
    { sizeMm: 2.5 },
  );
}
