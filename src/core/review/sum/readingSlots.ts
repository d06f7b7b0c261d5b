import { degToRad, type Degrees } from '../../units/index.ts';

/**
 * Readings told apart. [-]; two headings less than 360/65 536 = 0.0055° apart count as the one that came first, so
 * that the positions of a disc are exact and everything else is far within what a vane can mean.
 */
const SLOTS = 65_536;

/** What a reading covers to either side. [deg] */
export type HalfWidthOf = (headingDeg: Degrees) => Degrees;

/**
 * The readings that a record holds: a disc shows the same few headings millions of times, so that their sine, cosine
 * and width are worked out once.
 *
 * @check src/core/review/sum/reviewSum.test.ts
 */
export class ReadingSlots {
  readonly count = SLOTS;
  /** First heading that came to the slot; NaN = none yet. [deg] */
  readonly headings = new Float64Array(SLOTS).fill(NaN);
  readonly norths = new Float64Array(SLOTS);
  readonly easts = new Float64Array(SLOTS);
  /** [deg] */
  readonly halfWidths = new Float64Array(SLOTS);
  private readonly halfWidthOf: HalfWidthOf;

  /** @param halfWidthOf - What a reading covers to either side. [deg] */
  constructor(halfWidthOf: HalfWidthOf) {
    this.halfWidthOf = halfWidthOf;
  }

  /** Makes the slot of a heading in [0, 360) known. [deg] */
  learn(slot: number, headingDeg: Degrees): void {
    if (!Number.isNaN(this.headings[slot]!)) return;
    const turn = degToRad(headingDeg);
    this.headings[slot] = headingDeg;
    this.norths[slot] = Math.cos(turn);
    this.easts[slot] = Math.sin(turn);
    this.halfWidths[slot] = this.halfWidthOf(headingDeg);
  }
}

/** Slots a degree. [1/deg] */
export const SLOTS_PER_DEG = SLOTS / 360;
