import type { Level } from '../../codes/index.ts';
import type { Degrees } from '../../units/index.ts';
import type { DiscPlan, StripLayout } from '../discPlan.ts';
import type { RingSector } from '../discSpec.ts';
import type { GridInside } from '../draw/outlines.ts';
import { roundSheet, stripSheet, type Sheet } from '../draw/sheet.ts';
import { boreCircleMm } from '../layout/bore.ts';
import { notchSector } from '../layout/notchSector.ts';
import { stretchesWhere } from '../layout/windows.ts';
import { polarGrid, type PolarGrid } from './polarGrid.ts';

/** Where the pattern of a disc, or of a strip, may be: a ring, cut open to be unrolled where it is a strip. */
export interface Field {
  readonly ring: { readonly innerRadiusMm: number; readonly outerRadiusMm: number };
  /** Open in every body: the notch, or all that lies beyond the ends of a strip. */
  readonly open: readonly RingSector[];
  readonly inside: GridInside;
  readonly sheet: Sheet;
  /** Length of each degree of the field, of a strip. [mm/deg] */
  readonly mmPerDeg?: number;
  /** Sectors of the field that show a level that passes a test. */
  sectorsWhere(wanted: (level: Level) => boolean): RingSector[];
}

/** Share of the field that a strip takes; the rest is the gap between its ends. [-] */
const STRIP_SHARE = 0.96875; // 31/32: exact in binary, so that edges stay where they are

function roundField(plan: DiscPlan): Field {
  const { spec, code, tracks } = plan;
  const notch = notchSector(spec);
  return {
    ring: { innerRadiusMm: boreCircleMm(spec.bore) / 2, outerRadiusMm: spec.diameterMm / 2 },
    open: notch ? [notch] : [],
    inside: 'material',
    sheet: roundSheet,
    sectorsWhere: (wanted) =>
      tracks.flatMap(({ track, innerRadiusMm, outerRadiusMm }) =>
        stretchesWhere(code.tracks[track]!, wanted).map((stretch) => ({
          innerRadiusMm,
          outerRadiusMm,
          ...stretch,
        })),
      ),
  };
}

function stripField({ code, tracks }: DiscPlan, strip: StripLayout): Field {
  const { fromDeg, toDeg, heightMm, mmPerDeg, capDeg, leastWindowDeg } = strip;
  // A whole field of 360 degrees holds the strip and the gap between its ends.
  const share = (STRIP_SHARE * 360) / (toDeg - fromDeg);
  const onField = (angle: Degrees): Degrees => (angle - fromDeg) * share;
  const end = STRIP_SHARE * 360;
  const [first, last] = [onField(fromDeg + capDeg), onField(toDeg - capDeg)];
  // A hair less, so that a window of just the least width is cut.
  const least = 0.999 * leastWindowDeg * share;
  const perField = mmPerDeg / share;
  const sheet = stripSheet(perField);
  const turns = Array.from(
    { length: Math.ceil(toDeg / 360) - Math.floor(fromDeg / 360) + 2 },
    (_, turn) => 360 * (turn + Math.floor(fromDeg / 360) - 1),
  );
  return {
    ring: { innerRadiusMm: 0, outerRadiusMm: heightMm },
    open: [{ innerRadiusMm: 0, outerRadiusMm: heightMm, fromDeg: end, toDeg: 360 }],
    inside: 'nothing',
    sheet: {
      ...sheet,
      pointAt: (angle, across) => {
        const { xMm, yMm } = sheet.pointAt(angle, across);
        return { xMm: xMm + fromDeg * mmPerDeg, yMm };
      },
    },
    mmPerDeg: perField,
    sectorsWhere: (wanted) =>
      tracks.flatMap(({ track }) => {
        const { lowMm, highMm } = strip.bands[track]!;
        const radii = { innerRadiusMm: lowMm, outerRadiusMm: highMm };
        const cells = stretchesWhere(code.tracks[track]!, wanted).flatMap((stretch) =>
          turns.map((turn) => ({
            ...radii,
            fromDeg: Math.max(first, onField(stretch.fromDeg + turn)),
            toDeg: Math.min(last, onField(stretch.toDeg + turn)),
          })),
        );
        return cells.filter((cell) => cell.toDeg - cell.fromDeg > least);
      }),
  };
}

/** The field of a plan: round, or unrolled. */
export function fieldOf(plan: DiscPlan): Field {
  return plan.strip ? stripField(plan, plan.strip) : roundField(plan);
}

/** The grid of a field with openings cut into it, fillings put back, and its notch or ends cut last. */
export function fieldGrid(
  field: Field,
  openings: readonly RingSector[],
  fillings: readonly RingSector[],
): PolarGrid {
  const grid = polarGrid(field.ring, [...openings, ...field.open], fillings);
  return field.mmPerDeg === undefined ? grid : { ...grid, mmPerDeg: field.mmPerDeg };
}

/** The whole of a field, as a sector. */
export function wholeField({ ring }: Field): RingSector {
  return { ...ring, fromDeg: 0, toDeg: 360 };
}
