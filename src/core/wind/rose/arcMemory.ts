import type { Degrees } from '../../units/index.ts';
import { type Sectors, sectorShares } from './sectors.ts';

/** Readings remembered at a time. [-]; as many as the positions of the finest disc that is made here */
const SLOTS = 4096;

/** Slot of a heading [deg] in [0, 360): each position of a disc has its own. [-] */
export function slotFor(headingDeg: Degrees): number {
  return Math.floor(headingDeg * (SLOTS / 360));
}

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
  /** Where its parts begin in `shares`. */
  readonly starts = new Int32Array(SLOTS);
  /** Part in each of the sectors. [-] */
  readonly shares: Float64Array;
  private readonly sectors: Sectors;
  private readonly headings = new Float64Array(SLOTS).fill(NaN);
  private readonly halfWidths = new Float64Array(SLOTS);

  constructor(sectors: Sectors) {
    const row = sectors.count + 1; // an arc of a whole turn touches its first sector twice
    this.sectors = sectors;
    this.shares = new Float64Array(SLOTS * row);
    for (let slot = 0; slot < SLOTS; slot++) this.starts[slot] = slot * row;
  }

  /** Whether the slot holds this very reading. [deg] */
  holds(slot: number, headingDeg: Degrees, halfWidthDeg: Degrees): boolean {
    return this.headings[slot] === headingDeg && this.halfWidths[slot] === halfWidthDeg;
  }

  /**
   * Puts the parts of a reading in its slot, for use at once.
   *
   * @param slot - As `slotFor` gives it. [-]
   * @param headingDeg - [deg], 0 ≤ d < 360
   * @param halfWidthDeg - [deg], 0..180
   * @throws `wind/bad-reading` as `sectorShares`.
   */
  learn(slot: number, headingDeg: Degrees, halfWidthDeg: Degrees): void {
    const parts = sectorShares(this.sectors, headingDeg, halfWidthDeg);
    this.headings[slot] = headingDeg;
    this.halfWidths[slot] = halfWidthDeg;
    this.firsts[slot] = parts[0]!.sector;
    this.counts[slot] = parts.length;
    parts.forEach(({ share }, i) => (this.shares[this.starts[slot]! + i] = share));
  }
}
