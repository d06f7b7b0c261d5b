import { showMm, showNumber } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { materials } from '../materials.ts';
import { alongMm, columnSpanDeg, rowCount, type PolarGrid } from '../pieces/polarGrid.ts';
import { discPlace, type Fault, type PlaceAt } from './fault.ts';

/** A fingertip that brushes the disc while it is handled. [N] @source common practice, no source. */
const TOUCH_N = 1;

/** Stress kept below what breaks the material. [-] @source common practice, no source. */
const SAFETY = 1.5;

/** A stretch of a ring with nothing beside it: it bridges a window below and a window, or nothing, above. */
interface Bridge {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly radiusMm: number;
  readonly atDeg: number;
}

/** Longest free stretch of each ring of a grid, round the turn; a whole free ring is a loose piece, told elsewhere. */
function bridgesOf(grid: PolarGrid): Bridge[] {
  const columns = grid.anglesDeg.length;
  const isFilled = (row: number, column: number): boolean =>
    row >= 0 && row < rowCount(grid) && grid.filled[row * columns + (column % columns)] === 1;
  const bridges: Bridge[] = [];
  for (let row = 1; row < rowCount(grid); row++) {
    const isFree = (column: number): boolean =>
      isFilled(row, column) && !isFilled(row - 1, column) && !isFilled(row + 1, column);
    const [inner, outer] = [grid.radiiMm[row]!, grid.radiiMm[row + 1]!];
    for (let first = 0; first < columns; first++) {
      if (!isFree(first) || isFree(first + columns - 1)) continue;
      let spanDeg = 0;
      for (let column = first; isFree(column); column++) spanDeg += columnSpanDeg(grid, column % columns);
      const radiusMm = (inner + outer) / 2;
      const lengthMm = alongMm(grid, radiusMm, spanDeg);
      bridges.push({
        widthMm: outer - inner,
        lengthMm,
        radiusMm,
        atDeg: grid.anglesDeg[first]! + spanDeg / 2,
      });
    }
  }
  return bridges;
}

/**
 * Bending stress of a bridge held at both ends and pressed in its middle. [MPa]
 *
 * @source beam built in at both ends: moment F l / 8; section modulus w t² / 6. A curved bridge twists as well, which
 * the safety covers.
 * @check src/core/disc/check/bridges.test.ts
 */
export function bridgeStressMpa(lengthMm: number, widthMm: number, thicknessMm: number): number {
  return (6 * TOUCH_N * lengthMm) / (8 * widthMm * thicknessMm ** 2);
}

/** Stress that the disc's material bears. [MPa] */
function allowedMpa({ process }: DiscSpec): number {
  return materials[process.kind].flexuralMpa / SAFETY;
}

/** Least thickness at which no bridge of a grid breaks at a touch; 0 where it has none. [mm] */
export function leastThicknessMm(grid: PolarGrid, spec: DiscSpec): number {
  const atOne = bridgesOf(grid).map(({ lengthMm, widthMm }) => bridgeStressMpa(lengthMm, widthMm, 1));
  return Math.sqrt(Math.max(0, ...atOne) / allowedMpa(spec));
}

/**
 * The bridge that would break first, where one would.
 *
 * @param grid - Material of a disc with holes, ribs included.
 * @param spec - The disc as asked for. [mm]
 * @param placeAt - Where a place of the grid lies on the drawing.
 */
export function bridgeFaults(grid: PolarGrid, spec: DiscSpec, placeAt: PlaceAt = discPlace): Fault[] {
  const stressOf = ({ lengthMm, widthMm }: Bridge) => bridgeStressMpa(lengthMm, widthMm, spec.thicknessMm);
  const [worst] = bridgesOf(grid).sort((a, b) => stressOf(b) - stressOf(a));
  const allowed = allowedMpa(spec);
  if (!worst || stressOf(worst) <= allowed) return [];
  const { widthMm, lengthMm, radiusMm, atDeg } = worst;
  const place = placeAt(radiusMm, atDeg % 360);
  return [
    {
      code: 'disc/bridge-too-weak',
      what: 'A web, rim or rib that bridges windows would break at the touch of a finger.',
      where: 'disc.thicknessMm',
      got: `${showNumber(stressOf(worst), 0)} MPa in a bridge ${showMm(widthMm)} wide and ${showNumber(lengthMm, 1)} mm long at ${place.text}`,
      allowed: `${showNumber(allowed, 0)} MPa (${materials[spec.process.kind].name})`,
      at: [place],
    },
  ];
}
