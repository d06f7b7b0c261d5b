import { positionCentreDeg } from '../../codes/index.ts';
import { headingOfDiscAngle, type Instrument } from '../../instrument/index.ts';
import { turnBetween, type Degrees } from '../../units/index.ts';
import type { HalfWidthOf } from './readingSlots.ts';

/** Rounding of a logged heading: one decimal at the coarsest. [deg] */
const ROUNDED_DEG = 0.06;

/** What the readings of an instrument cover. */
export interface ReadingWidths {
  readonly halfWidthOf: HalfWidthOf;
  /** Narrowest and widest. [deg] */
  readonly leastDeg: Degrees;
  readonly mostDeg: Degrees;
  readonly source: 'as-built' | 'drawn';
}

type Known = Pick<Instrument, 'need' | 'site' | 'head' | 'asBuilt'>;

/**
 * What each reading covers to either side: as the recorded turn found it, else half a step as drawn.
 *
 * A heading that is no position of this disc, interpolated or of another instrument, counts as a point: 0.
 *
 * @param instrument - Positions, north settings and the as-built table. [-], [deg]
 * @check src/core/review/sum/readingWidths.test.ts
 */
export function readingWidths(instrument: Known): ReadingWidths {
  const { need, site, head, asBuilt } = instrument;
  const places =
    asBuilt?.positions ??
    Array.from({ length: need.positions }, (_, position) => ({
      centreDeg: positionCentreDeg(position, need.positions),
      halfWidthDeg: 180 / need.positions,
    }));
  const otherFace = head.patternedFace === 'up' ? ('down' as const) : ('up' as const);
  const face = { patternedFace: asBuilt?.sense === 'reversed' ? otherFace : head.patternedFace };
  const norths = new Set([site.northOffsetDeg, ...site.northHistory.map(({ offsetDeg }) => offsetDeg)]);
  const known = [...norths].flatMap((northOffsetDeg) =>
    places.map(({ centreDeg, halfWidthDeg }) => ({
      headingDeg: headingOfDiscAngle({ site: { northOffsetDeg }, head: face }, centreDeg),
      halfWidthDeg,
    })),
  );
  const widths = places.map(({ halfWidthDeg }) => halfWidthDeg);
  return {
    halfWidthOf: (heading) =>
      known.find(({ headingDeg }) => Math.abs(turnBetween(headingDeg, heading)) <= ROUNDED_DEG)
        ?.halfWidthDeg ?? 0,
    leastDeg: Math.min(...widths),
    mostDeg: Math.max(...widths),
    source: asBuilt ? 'as-built' : 'drawn',
  };
}
