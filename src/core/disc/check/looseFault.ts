import { showDegrees, showMm, showNumber } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { LoosePiece } from '../pieces/lands.ts';
import { isWholeRing } from '../pieces/polarGrid.ts';
import type { Holding, RibRefusal } from '../pieces/ribs.ts';
import { discPlace, type Fault } from './fault.ts';

/** Pieces named in full; the text says how many more there are. [-] */
const NAMED = 8;

function placeText({ lands }: LoosePiece, plan: DiscPlan): string {
  if (lands.length === 0) {
    const ring = plan.tracks.find(({ windows }) => windows.some(isWholeRing));
    return `the ring outside track ${ring?.track ?? '?'}, whose window goes all the way round`;
  }
  const places = lands.map(
    ({ track, fromDeg, toDeg }) =>
      `track ${track.track} from ${showDegrees(fromDeg)} to ${showDegrees(toDeg % 360)}`,
  );
  const more = places.length > 2 ? [`${places.length - 2} more lands`] : [];
  return [...places.slice(0, 2), ...more].join(' with ');
}

function reasonText(refusal: RibRefusal): string {
  if (refusal.reason === 'nothing-near') return 'no held material lies beside its windows';
  if (refusal.reason === 'too-far') {
    return `a rib to the nearest held material would be ${showNumber(refusal.lengthMm, 1)} mm long, where ${showNumber(refusal.longestMm, 1)} mm is the most`;
  }
  return `a track ${showMm(refusal.bandMm)} wide has no room beside its middle half for a rib of ${showMm(refusal.widthMm)}`;
}

/**
 * Pieces that would fall out and that no rib can hold, with their places and the reason.
 *
 * @param holding - Outcome of holding the disc's pieces.
 * @returns One fault, or `null` when all are held.
 */
export function looseFault({ loose, plan }: Holding): Fault | null {
  const [first] = loose;
  if (!first) return null;
  const named = loose.slice(0, NAMED).map(({ piece }) => placeText(piece, plan));
  const more = loose.length > NAMED ? `; and ${loose.length - NAMED} more` : '';
  return {
    code: 'disc/loose-piece',
    what: `Pieces of the disc would fall out, and no rib can hold them: ${reasonText(first.refusal)}.`,
    where: 'disc.webMm',
    got: `${loose.length} loose ${loose.length === 1 ? 'piece' : 'pieces'}: ${named.join('; ')}${more}`,
    allowed: 'one piece',
    at: loose
      .slice(0, NAMED)
      .flatMap(({ piece: { lands } }) =>
        lands.map(({ track, fromDeg, toDeg }) => discPlace(track.midRadiusMm, (fromDeg + toDeg) / 2)),
      ),
  };
}
