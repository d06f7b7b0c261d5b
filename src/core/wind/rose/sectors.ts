import { wrapDegrees, type Degrees } from '../../units/index.ts';
import { badReading, badSetting, requireCount, requireFinite } from '../refusal.ts';

/** Rounding that does not make an arc touch the next sector. [deg] */
const EDGE_NOISE_DEG = 1e-9;

/** More sectors than a picture or a disc can tell apart. [-] */
const MOST_SECTORS = 720;

/** Equal sectors of the compass, counted clockwise. */
export interface Sectors {
  /** [-], 1..720 */
  readonly count: number;
  /** Middle of the first sector; 0 puts it astride north. [deg] */
  readonly firstCentreDeg: Degrees;
}

/** The part of a reading that falls in one sector. */
export interface SectorShare {
  readonly sector: number;
  /** [-], 0..1; all parts of a reading add up to 1 */
  readonly share: number;
}

/** @throws `wind/bad-setting` when the count is no whole number; `wind/bad-reading` for the centre. */
export function requireSectors({ count, firstCentreDeg }: Sectors): void {
  requireCount(count, 1, 'sectors.count', 16);
  if (count > MOST_SECTORS) throw badSetting('sectors.count', count, `up to ${MOST_SECTORS}`, 'Use 36.');
  requireFinite(firstCentreDeg, 'sectors.firstCentreDeg', '[deg]');
}

/** Middle of a sector, in [0, 360). [deg] */
export function sectorCentreDeg({ count, firstCentreDeg }: Sectors, sector: number): Degrees {
  return wrapDegrees(firstCentreDeg + (sector * 360) / count);
}

/**
 * The sectors that a reading falls in, each with its part: a reading covers an arc, not a point.
 *
 * Sharing by overlap keeps 32 positions from leaving gaps in 36 sectors, and a position whose middle lies on
 * an edge from turning the whole rose to one side. Headings rounded to 10° have a half-width of 5°.
 *
 * @param sectors - Layout of the rose.
 * @param headingDeg - Middle of the arc that the reading covers. [deg], finite
 * @param halfWidthDeg - To either side; 0 = a point, which on an edge belongs to the clockwise sector. [deg], 0..180
 * @returns Parts of the sectors touched, clockwise.
 * @throws `wind/bad-setting`, `wind/bad-reading`.
 * @source Derived (overlap of arcs); the bias it removes: J. G. Droppo, B. A. Napier, J. Air & Waste Manage.
 *   Assoc. 58 (2008) 913, value from memory.
 * @check test/published/boston-1995/rose.test.ts
 */
export function sectorShares(sectors: Sectors, headingDeg: Degrees, halfWidthDeg: Degrees): SectorShare[] {
  requireSectors(sectors);
  requireFinite(headingDeg, 'sectorShares(headingDeg)', '[deg]');
  if (!(halfWidthDeg >= 0 && halfWidthDeg <= 180)) {
    throw badReading('sectorShares(halfWidthDeg)', halfWidthDeg, '0°..180°');
  }
  const width = 360 / sectors.count;
  const start = wrapDegrees(headingDeg - halfWidthDeg - sectors.firstCentreDeg + width / 2);
  if (halfWidthDeg <= EDGE_NOISE_DEG)
    return [{ sector: Math.floor(start / width) % sectors.count, share: 1 }];
  const shares: SectorShare[] = [];
  const end = start + 2 * halfWidthDeg;
  let sector = Math.floor((start + EDGE_NOISE_DEG) / width);
  for (let from = start; from < end; sector++) {
    const edge = (sector + 1) * width;
    const to = edge > end - EDGE_NOISE_DEG ? end : edge;
    shares.push({ sector: sector % sectors.count, share: (to - from) / (end - start) });
    from = to;
  }
  return shares;
}
