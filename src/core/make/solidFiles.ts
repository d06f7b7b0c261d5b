import type { Problem } from '../error/index.ts';
import type { MadeFile } from './madeFile.ts';
import type { NamedSvg } from './solids/madePart.ts';
import { meshStl } from './solids/meshStl.ts';
import type { Solid } from './solids/solid.ts';
import { threeMfBytes } from './threeMf/threeMfBytes.ts';

/** Solids with their drawings, as the parts of a build and the coupon give them. */
interface Printed {
  readonly solids: readonly Solid[];
  readonly drawings: readonly NamedSvg[];
  readonly sheets: readonly NamedSvg[];
  readonly problems: readonly Problem[];
}

/**
 * Files of printed parts: each solid as STL with its drawing, all of them in one 3MF, and flat sheets at true size.
 *
 * @param folder - Folder of the result they go into.
 * @param title - What the 3MF holds.
 * @param bedMm - Width of the printer's bed. [mm]
 */
export function solidFiles(folder: string, title: string, printed: Printed, bedMm: number): MadeFile[] {
  const { solids, drawings, sheets } = printed;
  const parts = solids.map((solid) => ({ name: solid.name, bodies: [solid] }));
  return [
    ...solids.map((solid) => ({ path: `${folder}/${solid.name}.stl`, content: meshStl(solid) })),
    ...drawings.map(({ name, svg }) => ({ path: `${folder}/${name}.drawing.svg`, content: svg })),
    ...sheets.map(({ name, svg }) => ({ path: `${folder}/${name}.svg`, content: svg })),
    ...(parts.length > 0
      ? [{ path: `${folder}/${folder}.3mf`, content: threeMfBytes(title, parts, bedMm) }]
      : []),
  ];
}
