import type { HeadPlan } from '../../head/index.ts';
import type { Point } from '../../disc/index.ts';
import { showMm } from '../../units/index.ts';
import { drawingArea, type Paper } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';

/** A part in the exploded view, seen from the side. */
interface Piece {
  readonly label: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The parts along the shaft from the top down, for the way the disc looks. */
function piecesOf({ disc, spec, channels }: HeadPlan): Piece[] {
  const { diameterMm, thicknessMm, hubDiameterMm } = disc.spec;
  const lights = spec.light.kind === 'laser' ? 'laser' : 'lights';
  const sensors: Piece = {
    label: `sensor holder, ${channels.length} sensors towards the patterned face`,
    widthMm: 0.75 * diameterMm,
    heightMm: 14,
  };
  const emitters: Piece = { label: `holder of the ${lights}`, widthMm: 0.75 * diameterMm, heightMm: 14 };
  const code: Piece = {
    label: `${disc.strip ? 'coded strip' : `coded disc ⌀${showMm(diameterMm)}`}, patterned face ${spec.patternedFace}`,
    widthMm: diameterMm,
    heightMm: Math.max(2, thicknessMm),
  };
  const isUp = spec.patternedFace === 'up';
  return [
    { label: 'vane on its shaft', widthMm: 0.5 * hubDiameterMm, heightMm: 24 },
    { label: 'upper housing with bearing and drip edge', widthMm: 1.25 * diameterMm, heightMm: 20 },
    isUp ? sensors : emitters,
    code,
    isUp ? emitters : sensors,
    { label: 'lower bearing', widthMm: hubDiameterMm, heightMm: 10 },
    { label: 'base with controller and cable gland', widthMm: 1.25 * diameterMm, heightMm: 24 },
  ];
}

/** Share of the sheet's width that pictures take; the rest holds the words. [-] */
const PICTURE_SHARE = 0.55;

/** Parts along the axis in the order in which they go together; widths in proportion, heights as seen. */
export function drawExploded(page: SheetPage, head: HeadPlan, paper: Paper): void {
  const area = drawingArea(paper);
  const pieces = piecesOf(head);
  const widest = Math.max(...pieces.map(({ widthMm }) => widthMm));
  const shrink = Math.min(1, (PICTURE_SHARE * area.widthMm) / widest);
  const axis = area.xMm + (PICTURE_SHARE * area.widthMm) / 2;
  const heights = pieces.reduce((sum, { heightMm }) => sum + heightMm, 0);
  const gap = (area.heightMm - 14 - heights) / (pieces.length + 1);
  const at = (xMm: number, yMm: number): Point => ({ xMm, yMm });
  let y = area.yMm + area.heightMm - 10;
  page.text('Exploded view from the side; distances are not to scale.', at(area.xMm, y + 4), { sizeMm: 2.8 });
  for (const [index, { label, widthMm, heightMm }] of pieces.entries()) {
    page.line(at(axis, y), at(axis, y - gap), 0.08);
    y -= gap + heightMm;
    const width = shrink * widthMm;
    page.box({ xMm: axis - width / 2, yMm: y, widthMm: width, heightMm }, 0.35);
    const textX = area.xMm + PICTURE_SHARE * area.widthMm + 6;
    page.line(at(axis + width / 2, y + heightMm / 2), at(textX - 1, y + heightMm / 2));
    page.text(`${index + 1}  ${label}`, at(textX, y + heightMm / 2 - 0.9), {
      sizeMm: 2.6,
      widthMm: area.xMm + area.widthMm - textX,
    });
  }
  page.line(at(axis, y), at(axis, y - gap), 0.08);
}
