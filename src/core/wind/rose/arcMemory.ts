import type { Degrees } from '../../units/index.ts';
import { type Sectors, sectorShares } from './sectors.ts';

/** Readings remembered at a time. [-]; as many as the positions of the finest disc that is made here */
const SLOTS = 4096;

/**
 * Sector shares of readings, worked out once for each reading that a disc can show.
 *
 * @source as `sectorShares`, whose answers it repeats.
 * @check src/core/wind/rose/roseSum.test.ts
 */
export class ArcMemory {
  /** First sector of the reading in each slot. */
  readonly firsts = new Uint16Array(SLOTS);
  /** Sectors that it touches, clockwise from the first. [-] */
  readonly counts = new Uint16Array(SLOTS);
  /** Part in each of them, one row of `sectors.count + 1` a slot. [-] */
  readonly shares: Float64Array;
  /** Length of a row: an arc of a whole turn touches its first sector twice. [-] */
  readonly row: number;
  private readonly sectors: Sectors;
  private readonly headings = new Float64Array(SLOTS).fill(NaN);
  private readonly halfWidths = new Float64Array(SLOTS);

  constructor(sectors: Sectors) {
    this.sectors = sectors;
    this.row = sectors.count + 1;
    this.shares = new Float64Array(SLOTS * this.row);
  }

  /**
   * Slot in which the parts of a reading now stand, for use at once.
   *
   * @param headingDeg - [deg], 0 ≤ d < 360
   * @param halfWidthDeg - [deg], 0..180
   * @throws `wind/bad-reading` as `sectorShares`.
   */
  slotOf(headingDeg: Degrees, halfWidthDeg: Degrees): number {
    const slot = Math.floor(headingDeg * (SLOTS / 360));
    if (this.headings[slot] === headingDeg && this.halfWidths[slot] === halfWidthDeg) return slot;
    const parts = sectorShares(this.sectors, headingDeg, halfWidthDeg);
    this.headings[slot] = headingDeg;
    this.halfWidths[slot] = halfWidthDeg;
    this.firsts[slot] = parts[0]!.sector;
    this.counts[slot] = parts.length;
    parts.forEach(({ share }, i) => (this.shares[slot * this.row + i] = share));
    return slot;
  }
}
