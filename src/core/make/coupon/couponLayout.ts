import type { Instrument } from '../../instrument/index.ts';
import { showNumber } from '../../units/index.ts';
import { DIGITS_HEIGHT_MM, digitOutlines, digitsWidthMm } from '../solids/digits.ts';
import { circle, corners, type FlatPart } from '../solids/flat.ts';
import { rectangleOutline, type Outline, type Place } from '../solids/outline.ts';
import { COUPON_BAR_MM } from '../../disc/index.ts';

/** Widths of slots and tongues, as labelled. [mm] */
export const MARK_WIDTHS_MM = [0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2] as const;

/** Holes of the bore series, against the shaft. [mm] */
const BORE_STEPS_MM = [-0.2, 0, 0.2, 0.4, 0.6] as const;

const [PITCH_MM, SLOT_MM, TONGUE_MM, GAP_MM] = [9, 10, 8, 3];

/** Side of the windows that are held before the light. [mm] */
const WINDOW_MM = 10;

/** Width of the bar, and of the neck that holds it. [mm] */
const [BAR_WIDTH_MM, NECK_MM] = [6, 10];

/** The coupon as flat lines; sizes are drawn as labelled, without any correction. [mm] */
export interface CouponLayout {
  /** The plate with its slots, holes and open window. */
  readonly plate: FlatPart;
  /** Numbers that stand on it, or are engraved. */
  readonly labels: FlatPart;
  /** Where the material is twice as thick. */
  readonly pad: Outline;
  /** A loose square of the same sheet, laid over the plate where nothing can be printed thicker. */
  readonly tile: FlatPart;
  /** What is drawn and how large, for the drawing. */
  readonly sizes: readonly { readonly name: string; readonly mm: number }[];
}

/** Middle of each of some things in a row at equal distances. [mm] */
function rowMiddles(count: number, pitch: number): number[] {
  return Array.from({ length: count }, (_, index) => (index - (count - 1) / 2) * pitch);
}

/** Labels of the bore series. [mm] */
export function boreLabelsMm(shaftMm: number): number[] {
  return BORE_STEPS_MM.map((step) => Math.round((shaftMm + step) * 1000) / 1000).filter(
    (label) => label > 0.3,
  );
}

/** Outer edge with its tongues and its bar, against the clock from the lower left. */
function edge(half: number, low: number, high: number): Outline {
  const bar = COUPON_BAR_MM / 2;
  const [neckLow, barLow] = [low - GAP_MM, low - GAP_MM - BAR_WIDTH_MM];
  const tongues = rowMiddles(MARK_WIDTHS_MM.length, PITCH_MM)
    .flatMap((x, index): Place[] => {
      const side = MARK_WIDTHS_MM[index]! / 2;
      return [
        [x - side, high],
        [x - side, high + TONGUE_MM],
        [x + side, high + TONGUE_MM],
        [x + side, high],
      ];
    })
    .reverse();
  return [
    [-half, low],
    [-NECK_MM / 2, low],
    [-NECK_MM / 2, neckLow],
    [-bar, neckLow],
    [-bar, barLow],
    [bar, barLow],
    [bar, neckLow],
    [NECK_MM / 2, neckLow],
    [NECK_MM / 2, low],
    [half, low],
    [half, high],
    ...tongues,
    [-half, high],
  ];
}

/**
 * Where everything on the coupon goes.
 *
 * From the top: tongues and slots of nine widths with their labels between, holes round the shaft's size, three windows
 * for the light (0 open, 1 the disc's thickness, 2 twice that), and the 50 mm bar.
 *
 * @param instrument - Gives the shaft. [mm]
 */
export function couponLayout({ disc }: Instrument): CouponLayout {
  const shaft = disc.bore.diameterMm;
  const bores = boreLabelsMm(shaft);
  const boreRoom = shaft + 1;
  const borePitch = Math.max(boreRoom + 4, digitsWidthMm(showNumber(shaft + 0.6, 3)) + 3);
  const half = Math.max((MARK_WIDTHS_MM.length * PITCH_MM) / 2 + 1, (bores.length * borePitch) / 2 + 2);
  const line = DIGITS_HEIGHT_MM + 2 * GAP_MM;
  const markLabels = -line / 2;
  const slots = markLabels - line / 2 - SLOT_MM / 2;
  const boreLabels = slots - SLOT_MM / 2 - line / 2;
  const boreRow = boreLabels - line / 2 - boreRoom / 2;
  const windowLabels = boreRow - boreRoom / 2 - line / 2;
  const windows = windowLabels - line / 2 - WINDOW_MM / 2;
  const low = windows - WINDOW_MM / 2 - GAP_MM;
  const marks = rowMiddles(MARK_WIDTHS_MM.length, PITCH_MM);
  const boreXs = rowMiddles(bores.length, borePitch);
  const windowXs = rowMiddles(3, 2 * WINDOW_MM);
  const square = (x: number): Outline => rectangleOutline([WINDOW_MM, WINDOW_MM], [x, windows]);
  const slotOf = (x: number, index: number): Outline =>
    rectangleOutline([MARK_WIDTHS_MM[index]!, SLOT_MM], [x, slots]);
  const barLabel: Place = [-COUPON_BAR_MM / 2 + 5, low - GAP_MM - BAR_WIDTH_MM / 2];
  return {
    plate: [
      corners(edge(half, low, 0)),
      ...marks.map((x, index) => corners(slotOf(x, index))),
      ...bores.map((label, index) => circle(label / 2, [boreXs[index]!, boreRow])),
      corners(square(windowXs[0]!)),
    ],
    labels: [
      ...marks.flatMap((x, index) => digitOutlines(MARK_WIDTHS_MM[index]!.toFixed(1), [x, markLabels])),
      ...bores.flatMap((label, index) => digitOutlines(showNumber(label, 3), [boreXs[index]!, boreLabels])),
      ...windowXs.flatMap((x, index) => digitOutlines(String(index), [x, windowLabels])),
      ...digitOutlines(String(COUPON_BAR_MM), barLabel),
    ].map(corners),
    pad: square(windowXs[2]!),
    tile: [
      corners(rectangleOutline([WINDOW_MM + 4, WINDOW_MM + 4], [half + GAP_MM + WINDOW_MM / 2 + 2, windows])),
    ],
    sizes: [
      { name: 'bar', mm: COUPON_BAR_MM },
      ...MARK_WIDTHS_MM.map((mm) => ({ name: `slot and tongue ${mm.toFixed(1)}`, mm })),
      ...bores.map((mm) => ({ name: `hole ${showNumber(mm, 3)}`, mm })),
      { name: 'side of each window', mm: WINDOW_MM },
    ],
  };
}
