import type { Level } from '../../codes/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscForm } from '../discSpec.ts';
import { drawnOf, formOf } from '../form.ts';
import { boreCircleMm } from '../layout/bore.ts';
import type { Pen } from '../pen.ts';
import { copperGrid } from '../pieces/copperGrid.ts';
import {
  blankGrid,
  groundLevel,
  levelCountOf,
  levelGrid,
  materialGrid,
  windowGrid,
} from '../pieces/materialGrid.ts';
import type { PolarGrid } from '../pieces/polarGrid.ts';
import { drawGrid } from './drawDisc.ts';
import { scaledPen } from './scaledPen.ts';
import { sheetPoint } from './sheetPoint.ts';

/** What is done along an outline, or within it. */
export type Operation = 'cut' | 'engrave' | 'mark' | 'print' | 'copper';

/** Outlines that are made in one go. */
export interface DiscLayer {
  readonly operation: Operation;
  /** Lower-case words joined by `-`; no two layers of a drawing share one. */
  readonly name: string;
  /** Colour of what lies within, `#rrggbb`; `null` where the outline itself is the path. */
  readonly fill: string | null;
  /** True for the layer from which the pattern is read. */
  readonly isPattern: boolean;
  /** Level shown within, on layers of colours; `null` for land, or for what is named. */
  readonly level: Level | null;
  draw(pen: Pen): void;
}

/** Black of a print that stops light. */
const DARK = '#000000';

/** Copper as it is shown; it is no colour to be printed. */
const COPPER_SHOWN = '#8a4b1f';

/** Clear length at both ends of the index line. [mm] @source common practice, no source. */
const MARK_CLEAR_MM = 1;

function layerOf(
  plan: DiscPlan,
  grid: PolarGrid,
  about: Pick<DiscLayer, 'operation' | 'name'> & Partial<DiscLayer>,
  holds: 'material' | 'openings' = 'material',
): DiscLayer {
  const draw = (pen: Pen): void => drawGrid(grid, plan, pen, holds);
  return { fill: null, isPattern: false, level: null, ...about, draw };
}

/** A line on the hub towards the index notch: which way round the disc goes on its shaft. */
function markLayer(plan: DiscPlan): DiscLayer[] {
  const { bore, hubDiameterMm } = plan.spec;
  const from = boreCircleMm(bore) / 2 + MARK_CLEAR_MM;
  const to = hubDiameterMm / 2 - MARK_CLEAR_MM;
  if (plan.strip || to - from < MARK_CLEAR_MM) return [];
  const draw = (pen: Pen): void => {
    const onto = scaledPen(pen, drawnOf(plan.spec).scale);
    onto.moveTo(sheetPoint(0, from));
    onto.lineTo(sheetPoint(0, to));
  };
  return [{ operation: 'mark', name: 'mark', fill: null, isPattern: false, level: null, draw }];
}

/** Colour of each level of an overlay or an inlay; `null` where that level carries no ink. */
export function levelColours(
  plan: DiscPlan,
  form: Extract<DiscForm, { kind: 'overlay' | 'inlay' }>,
): (string | null)[] {
  if (form.colours) return form.colours.slice(0, levelCountOf(plan));
  return Array.from({ length: levelCountOf(plan) }, (_, level) =>
    level === plan.spec.windowLevel ? null : DARK,
  );
}

function colourLayers(plan: DiscPlan, colours: readonly (string | null)[]): DiscLayer[] {
  // Without colours of its own, a print is dark wherever no window is: its ground and its lands are one.
  if (colours.filter((colour) => colour !== null).length === 1) {
    return [
      layerOf(plan, materialGrid(plan), { operation: 'print', name: 'print', fill: DARK, isPattern: true }),
    ];
  }
  return colours.flatMap((fill, level) =>
    fill === null
      ? []
      : [
          layerOf(
            plan,
            levelGrid(plan, level as Level),
            {
              operation: 'print',
              name: `print-level-${level}`,
              fill,
              isPattern: true,
              level: level as Level,
            },
            level === groundLevel(plan) ? 'material' : 'openings',
          ),
        ],
  );
}

/**
 * What is drawn of a disc, in the order in which it is made: inside before the cut that frees it.
 *
 * @param plan - A disc plan.
 * @returns Layers by operation. n ≥ 1
 * @check test/journeys/discForms.test.ts (each layer read back by separate code)
 */
export function discLayers(plan: DiscPlan): DiscLayer[] {
  const form = formOf(plan.spec);
  const edge = layerOf(plan, blankGrid(plan), { operation: 'cut', name: 'cut' });
  const marks = markLayer(plan);
  if (form.kind === 'through-cut') {
    return [...marks, layerOf(plan, materialGrid(plan), { operation: 'cut', name: 'cut', isPattern: true })];
  }
  if (form.kind === 'relief') {
    // What is engraved is what lies low.
    const engrave = { operation: 'engrave', name: 'engrave', isPattern: true } as const;
    if (form.raised === 'light') return [...marks, layerOf(plan, lowGround(plan), engrave), edge];
    return [...marks, layerOf(plan, windowGrid(plan), engrave, 'openings'), edge];
  }
  if (form.kind === 'copper') {
    const copper = { operation: 'copper', name: 'copper', fill: COPPER_SHOWN, isPattern: true } as const;
    const holds = form.copper === 'dark' ? 'material' : 'openings';
    return [layerOf(plan, copperGrid(plan, form.copper), copper, holds), edge];
  }
  return [...colourLayers(plan, levelColours(plan, form)), edge];
}

/** Everything but the windows: the floor of a relief whose windows stand up. */
function lowGround(plan: DiscPlan): PolarGrid {
  return materialGrid({ ...plan, ribs: [] });
}
