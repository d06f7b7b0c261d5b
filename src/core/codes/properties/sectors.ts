/** How a wind rose of some sectors fits a disc of some positions. */
export interface SectorFit {
  /** Sectors of the rose. [-] */
  readonly sectors: number;
  /** Every sector gets the same number of positions. */
  readonly isFair: boolean;
  /** What must stand on north for that: the boundary of two positions, or the middle of one; `null` where nothing helps. */
  readonly north: 'edge' | 'centre' | null;
  /** Fewest and most positions that one sector gets, with north as it is better. [-] */
  readonly least: number;
  readonly most: number;
  /** What to do, in a sentence. */
  readonly advice: string;
}

/** Roses in common use. Common practice, no source. [sectors] */
export const ROSE_SECTORS = [4, 8, 12, 16, 32, 36] as const;

/** Positions in each sector when sectors are centred on north and each position counts where its middle lies. */
function positionsPerSector(positions: number, sectors: number, north: 'edge' | 'centre'): number[] {
  const counts = Array.from({ length: sectors }, () => 0);
  for (let k = 0; k < positions; k++) {
    // The middle of position k, in turns times 2 * positions, so that whole numbers decide on which side it falls.
    const middle = north === 'edge' ? 2 * k + 1 : 2 * k;
    const sector = Math.floor((middle * sectors + positions) / (2 * positions)) % sectors;
    counts[sector]! += 1;
  }
  return counts;
}

function fitOf(positions: number, sectors: number): SectorFit {
  if (positions % sectors === 0) {
    const each = positions / sectors;
    const north = each % 2 === 0 ? 'edge' : 'centre';
    const advice =
      north === 'edge'
        ? `Each sector gets ${each} positions when the boundary of two positions stands on north.`
        : `Each sector gets ${each} ${each === 1 ? 'position' : 'positions'} when the middle of a position stands on north.`;
    return { sectors, isFair: true, north, least: each, most: each, advice };
  }
  const ways = (['edge', 'centre'] as const).map((north) => positionsPerSector(positions, sectors, north));
  const spreads = ways.map((counts) => ({ least: Math.min(...counts), most: Math.max(...counts) }));
  const { least, most } = spreads.reduce((a, b) => (b.most - b.least < a.most - a.least ? b : a));
  const below = Math.floor(positions / sectors) * sectors;
  const counts = [below, below + sectors].filter((count) => count > 0).join(' or ');
  return {
    sectors,
    isFair: false,
    north: null,
    least,
    most,
    advice:
      `Sectors would get ${least} to ${most} positions each, which shows in the rose as wind that was not there: ` +
      `take ${counts} positions, or share each position among the sectors it overlaps.`,
  };
}

/**
 * Which wind roses a disc divides into fairly, and what must stand on north for it.
 *
 * Sectors are centred on their directions, the first on north.
 *
 * @param positions - N. [-], n ≥ 2
 * @param sectorCounts - Roses to ask about; the usual ones if left out. [sectors]
 * @source derived: with N/M positions a sector, its borders lie N/2M steps from north, on edges of the code if that is whole.
 * @check src/core/codes/properties/sectors.test.ts
 */
export function sectorAdvice(positions: number, sectorCounts: readonly number[] = ROSE_SECTORS): SectorFit[] {
  return sectorCounts.map((sectors) => fitOf(positions, sectors));
}
