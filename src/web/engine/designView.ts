import type { Design } from '../../app/api.ts';
import { drawDisc } from '../../core/disc/index.ts';
import type { Problem } from '../../core/error/index.ts';
import type { Instrument } from '../../core/instrument/index.ts';
import { svgPen } from '../../core/make/index.ts';
import { sharedDesign, type SharedDesign } from '../../core/proof/index.ts';

/** A design as plain data: what pages show, and what the turning disc is made from. */
export interface DesignView {
  readonly instrument: Instrument;
  /** Code, disc, head and circuit; `headOfShared` makes the model of it again. */
  readonly shared: SharedDesign;
  /** Outlines of the disc's material as SVG path data, axis at the origin, index mark up. [mm] */
  readonly discPath: string;
  /** Why the head cannot read its disc at all. */
  readonly faults: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** A design without its functions. */
export function designView({ instrument, disc, head, placed }: Design): DesignView {
  const { pen, pathData } = svgPen();
  drawDisc(disc, pen);
  return {
    instrument,
    shared: sharedDesign(head),
    discPath: pathData(),
    faults: head.faults.map(placed),
    warnings: head.warnings.map(placed),
  };
}
