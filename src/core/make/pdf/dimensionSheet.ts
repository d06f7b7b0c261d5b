import { boreCircleMm, formOf, type Bore, type DiscPlan, type Point } from '../../disc/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { horizontalDimension, leader } from './dimension.ts';
import { drawingArea, type Area, type Paper } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';
import { drawLayers, extentOf } from './trueSize.ts';

/** Reductions a drawing may have. @source ISO 5455 */
const SCALES = [1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50] as const;

/** Height kept below the picture for dimensions, and below those for tables. [mm] */
const DIMENSIONS_MM = 30;
const TABLE_ROW_MM = 4.4;

/** Largest scale at which a plan and its dimensions fit a sheet. [-] */
export function drawingScale(plan: DiscPlan, paper: Paper): number {
  const { widthMm, heightMm } = pictureArea(plan, paper);
  const [width, height] = extentOf(plan).size;
  return SCALES.find((scale) => scale * width <= widthMm && scale * height <= heightMm) ?? SCALES.at(-1)!;
}

/** `1:2` */
export function scaleText(scale: number): string {
  return `1:${showNumber(1 / scale, 0)}`;
}

function pictureArea(plan: DiscPlan, paper: Paper): Area {
  const area = drawingArea(paper);
  const below = DIMENSIONS_MM + TABLE_ROW_MM * tableRows(plan).length;
  return { ...area, yMm: area.yMm + below, heightMm: area.heightMm - below };
}

/** What a bore is called on a drawing. */
export function boreText(bore: Bore): string {
  if (bore.shape === 'round') return `bore ⌀${showMm(bore.diameterMm)}`;
  if (bore.shape === 'hex') return `hexagon bore, ${showMm(bore.diameterMm)} across flats`;
  return `D bore ⌀${showMm(bore.diameterMm)}, ${showMm(bore.acrossFlatMm)} across the flat`;
}

function formText(plan: DiscPlan): string {
  const form = formOf(plan.spec);
  if (form.kind === 'relief')
    return `relief: floor ${showMm(form.floorMm)}, ${form.raised} marks stand up to ${showMm(plan.spec.thicknessMm)}`;
  if (form.kind === 'inlay') return `inlay ${showMm(form.depthMm)} deep in ${form.colours.length} materials`;
  if (form.kind === 'copper') return `etched copper counts as ${form.copper}`;
  return form.kind === 'overlay' ? 'printed pattern' : 'windows cut through';
}

/** Sizes that no arrow shows. */
function tableRows(plan: DiscPlan): string[] {
  const { spec, tracks, strip } = plan;
  const { process, notch } = spec;
  const bands = tracks.map((track, index) => {
    const [from, to] = strip
      ? [strip.bands[index]!.lowMm, strip.bands[index]!.highMm]
      : [track.innerRadiusMm, track.outerRadiusMm];
    const what = strip ? 'from the lower edge' : 'radius';
    return `track ${track.track}: ${what} ${showNumber(from, 2)} to ${showNumber(to, 2)} mm, ${track.windows.length} windows`;
  });
  return [
    `thickness ${showMm(spec.thicknessMm)}; ${formText(plan)}`,
    ...(strip ? [] : [boreText(spec.bore)]),
    ...(notch.widthMm > 0 && !strip
      ? [`index notch ${showMm(notch.widthMm)} wide, ${showMm(notch.depthMm)} deep, at disc angle 0`]
      : []),
    ...bands,
    `every edge within ±${showMm(2 * process.edgeSdMm)} (two standard deviations)${strip ? '' : `; bore to pattern within ±${showMm(2 * process.boreSdMm)}`}`,
  ];
}

/** The plan with its main sizes, as large as the sheet takes. */
export function drawDimensions(page: SheetPage, plan: DiscPlan, paper: Paper): void {
  const area = pictureArea(plan, paper);
  const scale = drawingScale(plan, paper);
  const { middle } = extentOf(plan);
  const at: Point = {
    xMm: area.xMm + area.widthMm / 2 - scale * middle[0],
    yMm: area.yMm + area.heightMm / 2 - scale * middle[1],
  };
  drawLayers(page, plan, { at, within: area, scale });
  const onPage = (xMm: number, yMm: number): Point => ({
    xMm: at.xMm + scale * xMm,
    yMm: at.yMm + scale * yMm,
  });
  if (plan.strip) {
    const { mmPerDeg, heightMm } = plan.strip;
    const below = onPage(0, 0).yMm - 8;
    horizontalDimension(
      page,
      [onPage(0, 0), onPage(360 * mmPerDeg, 0)],
      below,
      `one turn ${showMm(360 * mmPerDeg)}`,
    );
    leader(
      page,
      onPage(0, heightMm),
      { xMm: area.xMm + 10, yMm: onPage(0, heightMm).yMm + 6 },
      `width ${showMm(heightMm)}`,
    );
  } else {
    const { spec } = plan;
    const lowest = onPage(0, -spec.diameterMm / 2).yMm;
    const widths: [number, string][] = [
      [boreCircleMm(spec.bore), boreText(spec.bore)],
      [spec.hubDiameterMm, `hub ⌀${showMm(spec.hubDiameterMm)}`],
      [spec.diameterMm, `⌀${showMm(spec.diameterMm)}`],
    ];
    for (const [row, [width, text]] of widths.entries()) {
      horizontalDimension(page, [onPage(-width / 2, 0), onPage(width / 2, 0)], lowest - 7 * (row + 1), text);
    }
    if (spec.notch.widthMm > 0) {
      const notch = onPage(0, spec.diameterMm / 2);
      leader(page, notch, { xMm: notch.xMm + 14, yMm: notch.yMm - 1 }, 'index notch');
    }
  }
  const top = area.yMm - DIMENSIONS_MM - 1;
  for (const [row, text] of tableRows(plan).entries()) {
    page.text(
      text,
      { xMm: area.xMm, yMm: top - TABLE_ROW_MM * (row + 1) + TABLE_ROW_MM },
      { sizeMm: 2.8, widthMm: area.widthMm },
    );
  }
}
