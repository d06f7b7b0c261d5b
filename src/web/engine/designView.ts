import type { Design } from '../../app/api.ts';
import {
  discLayers,
  formOf,
  type DiscForm,
  type Operation,
  type RingSector,
  type StripLayout,
} from '../../core/disc/index.ts';
import type { Problem } from '../../core/error/index.ts';
import type { Instrument } from '../../core/instrument/index.ts';
import { svgPen } from '../../core/make/index.ts';
import { sharedDesign, type SharedDesign } from '../../core/proof/index.ts';

/** One layer of the disc's picture. */
export interface LayerView {
  readonly name: string;
  readonly operation: Operation;
  /** Colour of ink or material; `null` where only an outline is cut. */
  readonly fill: string | null;
  readonly isPattern: boolean;
  readonly level: number | null;
  /** SVG path data, axis at the origin and index mark up, or the length of a strip to the right. [mm] */
  readonly path: string;
}

/** A design as plain data: what pages show, and what the turning disc is made from. */
export interface DesignView {
  readonly instrument: Instrument;
  /** Code, disc, head and circuit; `headOfShared` makes the model of it again. */
  readonly shared: SharedDesign;
  readonly form: DiscForm['kind'];
  /** In the order in which they are made. n ≥ 1 */
  readonly layers: readonly LayerView[];
  readonly ribs: readonly RingSector[];
  readonly strip: StripLayout | null;
  readonly channelCount: number;
  readonly trackCount: number;
  /** Why the head cannot read its disc at all. */
  readonly faults: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** A design without its functions. */
export function designView({ instrument, disc, head, placed }: Design): DesignView {
  return {
    instrument,
    shared: sharedDesign(head),
    form: formOf(disc.spec).kind,
    layers: discLayers(disc).map(({ name, operation, fill, isPattern, level, draw }) => {
      const { pen, pathData } = svgPen();
      draw(pen);
      return { name, operation, fill, isPattern, level, path: pathData() };
    }),
    ribs: disc.ribs,
    strip: disc.strip ?? null,
    channelCount: head.channels.length,
    trackCount: disc.tracks.length,
    faults: head.faults.map(placed),
    warnings: head.warnings.map(placed),
  };
}
