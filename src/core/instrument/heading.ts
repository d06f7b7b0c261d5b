import { positionCentreDeg } from '../codes/index.ts';
import { wrapDegrees, type Degrees } from '../units/index.ts';
import type { Instrument } from './instrument.ts';

/** What joins disc angles to headings. */
export type HeadingFrame = {
  readonly site: Pick<Instrument['site'], 'northOffsetDeg'>;
  readonly head: Pick<Instrument['head'], 'patternedFace'>;
};

/**
 * Heading shown when a disc angle stands under the head's reference line.
 *
 * The head is fixed and the disc turns with the vane. When the vane turns clockwise, seen from above, a disc
 * whose patterned face looks up brings smaller disc angles under the head, since they grow clockwise on that face;
 * seen through from the other side they grow against it, so a face that looks down brings larger ones.
 *
 * @param frame - North offset of the site and which way the patterned face looks. [deg]
 * @param discAngle - Clockwise from the index mark, seen from the patterned face; any value. [deg]
 * @returns Clockwise from true north, where the wind comes from. [deg], [0, 360)
 * @source derived: heading = northOffsetDeg - angle for a face that looks up, + angle for one that looks down.
 * @check src/core/instrument/heading.test.ts
 */
export function headingOfDiscAngle({ site, head }: HeadingFrame, discAngle: Degrees): Degrees {
  return wrapDegrees(site.northOffsetDeg + (head.patternedFace === 'up' ? -discAngle : discAngle));
}

/**
 * Heading of the middle of a position's step.
 *
 * @param instrument - Its positions, north offset and patterned face are used. [-, deg]
 * @param position - 0..N-1. [-]
 * @returns Clockwise from true north, where the wind comes from. [deg], [0, 360)
 * @check src/core/instrument/heading.test.ts
 */
export function headingOfPosition(
  instrument: HeadingFrame & { readonly need: Pick<Instrument['need'], 'positions'> },
  position: number,
): Degrees {
  return headingOfDiscAngle(instrument, positionCentreDeg(position, instrument.need.positions));
}
