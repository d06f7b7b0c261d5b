/**
 * Length of the stretches of a record that count as independent of each other: a week. [ms]
 *
 * Weather carries over from day to day, so that days would promise too much; own choice, tested by simulation.
 */
export const BLOCK_MS = 7 * 86_400_000;

/**
 * Groups that the blocks of a record are dealt out to in turn, so that memory stays the same however long
 * the record is. [-]; 25 has no factor in common with the 52 weeks of a year
 */
export const GROUPS = 25;

/** Number of the block that an instant belongs to. [-], from the instant in [ms UTC] */
export function blockOf(atMs: number): number {
  return Math.floor(atMs / BLOCK_MS);
}

/** Group of a block, in 0..GROUPS-1. [-] */
export function groupOf(block: number): number {
  return ((block % GROUPS) + GROUPS) % GROUPS;
}
