import { wrapDegrees, type Degrees, type Random } from '../../units/index.ts';

/** How often the wind comes from where. */
export interface WindShares {
  /** Share of the wind between two headings, clockwise from the first. [-], 0..1 */
  shareIn(fromDeg: Degrees, widthDeg: Degrees): number;
  /** A heading drawn by these shares. [deg], [0, 360) */
  draw(random: Random): Degrees;
}

/**
 * Shares of equal sectors, each spread evenly over its sector.
 *
 * @param sectorShares - In any one unit, the first sector centred on north, then clockwise; `null` = all alike. [-]
 */
export function windShares(sectorShares: readonly number[] | null): WindShares {
  const shares = sectorShares ?? [1];
  const total = shares.reduce((sum, share) => sum + share, 0);
  const width = 360 / shares.length;
  const below = [0];
  for (const share of shares) below.push(below.at(-1)! + share / total);

  /** Share between the first sector's beginning and so far clockwise. */
  const upTo = (fromStart: Degrees): number => {
    const turns = Math.floor(fromStart / 360);
    const place = (fromStart - 360 * turns) / width;
    const sector = Math.min(shares.length - 1, Math.floor(place));
    return turns + below[sector]! + ((place - sector) * shares[sector]!) / total;
  };

  return {
    shareIn(fromDeg, widthDeg) {
      const start = wrapDegrees(fromDeg + width / 2);
      return upTo(start + Math.min(360, widthDeg)) - upTo(start);
    },
    draw(random) {
      const wanted = random.uniform();
      const sector = below.findLastIndex((share) => share <= wanted);
      return wrapDegrees((sector - 0.5 + random.uniform()) * width);
    },
  };
}

/** Where an arc of some width meets the most wind, and where the least. */
export interface ArcPlaces {
  /** Middle of the arc, and its share of the wind. [deg], [-] */
  readonly most: { readonly atDeg: Degrees; readonly share: number };
  readonly least: { readonly atDeg: Degrees; readonly share: number };
}

/** Differences in share below this are rounding. [-] */
const SAME = 1e-9;

/** Middle of the longest stretch of headings that have the wanted share; the first clockwise from north of equal ones. */
function middleOf(all: readonly number[], wanted: number): Degrees {
  const isWanted = (deg: Degrees): boolean => Math.abs(all[wrapDegrees(deg)]! - wanted) <= SAME;
  if (all.every((_, deg) => isWanted(deg))) return 0;
  let best = { from: 0, length: 0 };
  for (const from of all.keys()) {
    if (!isWanted(from) || isWanted(from - 1)) continue;
    let length = 1;
    while (isWanted(from + length)) length++;
    if (length > best.length) best = { from, length };
  }
  return wrapDegrees(best.from + (best.length - 1) / 2);
}

/**
 * Looks for both places in steps of a degree; of a stretch of equal ones its middle is told.
 *
 * @param shares - Any reckoning of shares; only `shareIn` is asked. [-]
 * @param widthDeg - Width of the arc. [deg]
 * @check src/core/weigh/wait/windShares.test.ts
 */
export function arcPlaces(shares: Pick<WindShares, 'shareIn'>, widthDeg: Degrees): ArcPlaces {
  const all = Array.from({ length: 360 }, (_, atDeg) =>
    shares.shareIn(wrapDegrees(atDeg - widthDeg / 2), widthDeg),
  );
  const [most, least] = [Math.max(...all), Math.min(...all)];
  return {
    most: { atDeg: middleOf(all, most), share: most },
    least: { atDeg: middleOf(all, least), share: least },
  };
}
