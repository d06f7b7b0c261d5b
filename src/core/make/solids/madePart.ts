import type { Problem } from '../../error/index.ts';
import { showMm } from '../../units/index.ts';
import { meshSizeMm } from './meshFacts.ts';
import { partDrawing, type Size } from './partDrawing.ts';
import { finished, type PrintSetting } from './print.ts';
import type { Shape } from './shapeKit.ts';
import type { Solid } from './solid.ts';

/** A drawing as an SVG file. */
export interface NamedSvg {
  readonly name: string;
  readonly svg: string;
}

/** A part with what its drawing says. */
export interface MadePart {
  readonly solid: Solid;
  /** Main sizes as they shall come out. [mm] */
  readonly sizes: readonly Size[];
  readonly notes: readonly string[];
}

/** Words about a part. */
export interface PartWords {
  readonly name: string;
  readonly sizes: readonly Size[];
  readonly notes: readonly string[];
}

/** A shape as a part to be printed. */
export function madePart(shape: Shape, print: PrintSetting, { name, sizes, notes }: PartWords): MadePart {
  return { solid: { name, mesh: finished(shape, print).mesh() }, sizes, notes };
}

/** Drawing of a part. */
export function drawingOf({ solid, sizes, notes }: MadePart): NamedSvg {
  return { name: solid.name, svg: partDrawing(solid, sizes, notes) };
}

/**
 * Parts that no bed of the printer holds, turned as one likes.
 *
 * @param smaller - What of the design makes the part smaller.
 * @returns One `make/beyond-bed` a part, n ≥ 0
 */
export function bedProblems(parts: readonly MadePart[], { bedMm }: PrintSetting, smaller: string): Problem[] {
  return parts.flatMap(({ solid }) => {
    const [width, depth] = meshSizeMm(solid.mesh);
    const largest = Math.max(width, depth);
    if (largest <= bedMm) return [];
    return [
      {
        code: 'make/beyond-bed',
        what: `The part ${solid.name} is larger than the printer's bed.`,
        where: 'parts.bedMm',
        got: `${showMm(width)} x ${showMm(depth)} on a bed of ${showMm(bedMm)}`,
        allowed: `${showMm(bedMm)} each way`,
        fix: `Set parts.bedMm to ${Math.ceil(largest)} if your printer has such a bed, or ${smaller}.`,
      },
    ];
  });
}
