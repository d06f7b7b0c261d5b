import { showMm } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { alongMm, columnSpanDeg, rowCount, type PolarGrid } from '../pieces/polarGrid.ts';
import { discPlace, type Fault, type FaultPlace, type PlaceAt } from './fault.ts';
import { leastDrawn } from './leastDrawn.ts';

/** What lies below and above a circle of the grid: 0 nothing, 1 material below, 2 above, 3 both. */
type Sides = 0 | 1 | 2 | 3;
const BOTH_OPEN = 0;
const BELOW = 1;
const ABOVE = 2;
const BOTH_SOLID = 3;

/** A place where material meets material, or opening meets opening, along a circle. */
interface Contact {
  readonly radiusMm: number;
  readonly atDeg: number;
  /** 0 where they meet at a corner only. [mm] */
  readonly lengthMm: number;
}

interface Contacts {
  readonly corners: Contact[];
  readonly solid: Contact[];
  readonly open: Contact[];
}

function sidesOf(grid: PolarGrid, circle: number): Sides[] {
  const columns = grid.anglesDeg.length;
  return grid.anglesDeg.map((_, column) => {
    const below = grid.filled[(circle - 1) * columns + column]!;
    const above = grid.filled[circle * columns + column]!;
    return (below * BELOW + above * ABOVE) as Sides;
  });
}

/** Notes each run of equal sides along one circle, round the turn. */
function noteCircle(grid: PolarGrid, circle: number, contacts: Contacts): void {
  const sides = sidesOf(grid, circle);
  const columns = sides.length;
  const radiusMm = grid.radiiMm[circle]!;
  for (let first = 0; first < columns; first++) {
    const before = sides[(first + columns - 1) % columns]!;
    const here = sides[first]!;
    if (here === before) continue;
    const atDeg = grid.anglesDeg[first]!;
    if (here + before === BELOW + ABOVE && here !== BOTH_OPEN && before !== BOTH_OPEN) {
      contacts.corners.push({ radiusMm, atDeg, lengthMm: 0 });
    }
    if (here !== BOTH_SOLID && here !== BOTH_OPEN) continue;
    let span = 0;
    for (let column = first; sides[column % columns] === here; column++)
      span += columnSpanDeg(grid, column % columns);
    const contact = { radiusMm, atDeg, lengthMm: alongMm(grid, radiusMm, span) };
    (here === BOTH_SOLID ? contacts.solid : contacts.open).push(contact);
  }
}

function narrowest(contacts: readonly Contact[], leastMm: number): { worst: Contact; count: number } | null {
  const thin = contacts.filter((contact) => contact.lengthMm < leastMm - 1e-9);
  const [first] = thin;
  if (!first) return null;
  return { worst: thin.reduce((a, b) => (b.lengthMm < a.lengthMm ? b : a), first), count: thin.length };
}

/** Places of the first few contacts. */
function placesOf(contacts: readonly Contact[], placeAt: PlaceAt): FaultPlace[] {
  return contacts.slice(0, 8).map(({ radiusMm, atDeg }) => placeAt(radiusMm, atDeg));
}

/**
 * Necks of the solid: where windows of neighbouring tracks meet at a corner, the material between them has no width.
 *
 * @param grid - Material of the disc, ribs included.
 * @param spec - The disc as asked for. [mm]
 * @param placeAt - Where a place of the grid lies on the drawing.
 * @returns Faults, n ≥ 0; none where every contact is as wide as the process can make it.
 */
export function neckFaults(grid: PolarGrid, spec: DiscSpec, placeAt: PlaceAt = discPlace): Fault[] {
  const placeText = ({ radiusMm, atDeg }: Contact): string => placeAt(radiusMm, atDeg).text;
  const contacts: Contacts = { corners: [], solid: [], open: [] };
  for (let circle = 1; circle < rowCount(grid); circle++) noteCircle(grid, circle, contacts);
  const least = leastDrawn(spec);
  const faults: Fault[] = [];
  const [corner] = contacts.corners;
  if (corner) {
    faults.push({
      code: 'disc/windows-meet-at-corner',
      what: 'Windows of neighbouring tracks meet at a corner, where the material between them has no width.',
      where: 'disc.webMm',
      got: `${contacts.corners.length} such corners, the first at ${placeText(corner)}; web ${showMm(spec.webMm)}`,
      allowed: 'no windows that meet at a corner',
      at: placesOf(contacts.corners, placeAt),
    });
  }
  const solid = narrowest(contacts.solid, least.landMm);
  if (solid) {
    faults.push({
      code: 'disc/neck-too-narrow',
      what: 'Lands of neighbouring tracks hang together by a neck narrower than the process can make.',
      where: 'disc.webMm',
      got: `${showMm(solid.worst.lengthMm)} at ${placeText(solid.worst)}, the narrowest of ${solid.count}`,
      allowed: `${showMm(least.landMm)} or more (${spec.process.kind})`,
      at: placesOf([solid.worst], placeAt),
    });
  }
  const open = narrowest(contacts.open, least.windowMm);
  if (open) {
    faults.push({
      code: 'disc/gap-too-narrow',
      what: 'Windows of neighbouring tracks run into each other by a gap narrower than the process can make.',
      where: 'disc.webMm',
      got: `${showMm(open.worst.lengthMm)} at ${placeText(open.worst)}, the narrowest of ${open.count}`,
      allowed: `${showMm(least.windowMm)} or more (${spec.process.kind})`,
      at: placesOf([open.worst], placeAt),
    });
  }
  return faults;
}
