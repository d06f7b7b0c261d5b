import type { Problem } from '../../error/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { flatOutlines } from '../solids/flat.ts';
import { flatSvg } from '../solids/flatSvg.ts';
import type { NamedSvg } from '../solids/madePart.ts';
import { partDrawing } from '../solids/partDrawing.ts';
import { withShapes } from '../solids/shapeKit.ts';
import type { Solid } from '../solids/solid.ts';
import { couponLayout, type CouponLayout } from './couponLayout.ts';

/** The coupon as files. */
export interface CouponParts {
  /** The coupon to print; none where the disc is cut or printed on film. n = 0..1 */
  readonly solids: readonly Solid[];
  /** What is what on it, and how to measure it. */
  readonly drawings: readonly NamedSvg[];
  /** The coupon at its true size, to cut or to print on film. n = 0..1 */
  readonly sheets: readonly NamedSvg[];
  readonly problems: readonly Problem[];
}

/** How high the labels stand. [mm] @source common practice, no source: three layers of 0.2 mm. */
const LABEL_MM = 0.6;

const HOW_TO_MEASURE = [
  'Measure with a caliper and write under disc.process.measured:',
  'barMm the long bar; slotMm and landMm the slot and the tongue labelled 2.0;',
  'narrowestSlotMm and narrowestLandMm the least that came out; boreLabelMm the tightest hole your shaft enters;',
  'footMm the width of the bar on the bed side less its width above;',
  'contrast: your sensor through windows 0, 1 and 2, with the light you will use.',
];

function couponSolid(layout: CouponLayout, thicknessMm: number): Promise<Solid> {
  return withShapes((kit) => {
    const plate = kit.prism(flatOutlines(layout.plate), [0, thicknessMm]);
    const pad = kit.prism([layout.pad], [thicknessMm / 2, 2 * thicknessMm]);
    const labels = kit.prism(flatOutlines(layout.labels), [thicknessMm / 2, thicknessMm + LABEL_MM]);
    return { name: 'coupon', mesh: plate.plus(pad, labels).mesh() };
  });
}

/**
 * The coupon that is made before anything else, by the process that shall make the disc.
 *
 * Drawn as labelled, without any correction: what comes out tells the corrections.
 *
 * @param instrument - Process, thickness and shaft. [mm]
 * @check src/core/make/coupon/couponParts.test.ts, test/journeys/solidParts.test.ts
 */
export async function couponParts(instrument: Instrument): Promise<CouponParts> {
  const layout = couponLayout(instrument);
  const { process, thicknessMm } = instrument.disc;
  const solid = await couponSolid(layout, process.kind === 'film' ? 1 : thicknessMm);
  const drawings = [{ name: solid.name, svg: partDrawing(solid, layout.sizes, HOW_TO_MEASURE) }];
  if (process.kind === 'fdm') return { solids: [solid], drawings, sheets: [], problems: [] };
  const title = 'Coupon, at its true size: make it at 100 %, never fitted to the page';
  const plate = [...layout.plate, ...layout.tile];
  const svg =
    process.kind === 'film'
      ? flatSvg(title, [{ operation: 'print', part: [...plate, ...layout.labels] }])
      : flatSvg(title, [
          { operation: 'engrave', part: layout.labels },
          { operation: 'cut', part: plate },
        ]);
  return { solids: [], drawings, sheets: [{ name: 'coupon', svg }], problems: [] };
}
