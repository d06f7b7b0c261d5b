import { degToRad } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { Bore, RingSector } from '../discSpec.ts';
import { notchSector } from '../layout/notchSector.ts';
import { boreCircleMm, boreSides } from '../layout/bore.ts';

/** Area of a piece of a ring. [mm²] @source closed form: half the angle times the difference of squared radii. */
function sectorAreaMm2({ innerRadiusMm, outerRadiusMm, fromDeg, toDeg }: RingSector): number {
  return (degToRad(toDeg - fromDeg) / 2) * (outerRadiusMm ** 2 - innerRadiusMm ** 2);
}

/** Area of the hole on the shaft. [mm²] @source sectors r²φ/2 of its circle, triangles r² sin(φ)/2 behind its flats. */
function boreAreaMm2(bore: Bore): number {
  const radius = boreCircleMm(bore) / 2;
  const turns = boreSides(bore).map(({ spanDeg, isFlat }) => {
    const turn = degToRad(spanDeg);
    return isFlat ? Math.sin(turn) : turn;
  });
  return (radius ** 2 / 2) * turns.reduce((sum, turn) => sum + turn, 0);
}

/**
 * Area of the disc's material seen from its face, in closed form; on film, of the dark print.
 *
 * @param plan - A disc plan; its ribs lie inside its windows.
 * @returns Area. [mm²]
 * @source derived: circle less bore, notch and windows, plus ribs, each a sector of a ring.
 * @check src/core/disc/draw/draw.test.ts (line integral along the drawn outlines)
 */
export function discAreaMm2(plan: DiscPlan): number {
  const notch = notchSector(plan.spec);
  const openings = plan.tracks.flatMap((track) => track.windows);
  const sum = (sectors: readonly RingSector[]) =>
    sectors.reduce((area, sector) => area + sectorAreaMm2(sector), 0);
  const whole = Math.PI * (plan.spec.diameterMm / 2) ** 2;
  return (
    whole - boreAreaMm2(plan.spec.bore) - (notch ? sectorAreaMm2(notch) : 0) - sum(openings) + sum(plan.ribs)
  );
}
