/** Classes of a degree that largest errors are counted in: how exactly a percentile is known. */
const CLASSES_PER_DEG = 100;

/**
 * What any number of builds add up to; its size does not depend on how many.
 *
 * Two tallies of different builds add up to the tally of both.
 */
export interface BuildTally {
  builds: number;
  good: number;
  /** Builds never more than a step out, never more than asked, and never showing a word the code does not have. */
  withinStep: number;
  accurate: number;
  legal: number;
  unseen: number;
  squareSum: number;
  shownDeg: number;
  misreadDeg: number;
  illegalDeg: number;
  turnedDeg: number;
  worstDeg: number;
  /** Builds by their largest error, in classes of a hundredth of a degree. n = 18001 */
  readonly classes: Uint32Array;
}

/** A tally of no builds. */
export function emptyTally(): BuildTally {
  return {
    builds: 0,
    good: 0,
    withinStep: 0,
    accurate: 0,
    legal: 0,
    unseen: 0,
    squareSum: 0,
    shownDeg: 0,
    misreadDeg: 0,
    illegalDeg: 0,
    turnedDeg: 0,
    worstDeg: 0,
    classes: new Uint32Array(180 * CLASSES_PER_DEG + 1),
  };
}

/** Adds one tally to another. */
export function addTally(into: BuildTally, from: BuildTally): void {
  for (const name of SUMS) into[name] += from[name];
  into.worstDeg = Math.max(into.worstDeg, from.worstDeg);
  for (const [i, count] of from.classes.entries()) {
    if (count > 0) into.classes[i]! += count;
  }
}

const SUMS = [
  'builds',
  'good',
  'withinStep',
  'accurate',
  'legal',
  'unseen',
  'squareSum',
  'shownDeg',
  'misreadDeg',
  'illegalDeg',
  'turnedDeg',
] as const;

/** Counts a build by its largest error. [deg] */
export function countWorst(tally: BuildTally, maxDeg: number): void {
  tally.classes[Math.floor(maxDeg * CLASSES_PER_DEG)]! += 1;
  if (maxDeg > tally.worstDeg) tally.worstDeg = maxDeg;
}

/**
 * Largest error that a share of the builds stays below.
 *
 * @param share - 0..1, e.g. 0.95. [-]
 * @returns Upper end of its class of a hundredth of a degree, and never above the worst build. [deg]
 */
export function errorBelow(tally: BuildTally, share: number): number {
  const wanted = share * tally.builds;
  let counted = 0;
  for (const [i, count] of tally.classes.entries()) {
    counted += count;
    if (counted >= wanted) return Math.min(tally.worstDeg, (i + 1) / CLASSES_PER_DEG);
  }
  return tally.worstDeg;
}

/** Widths a histogram's classes may have. [deg] */
const NICE_CLASSES_DEG = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
/** Classes that still fit side by side in a picture. */
const MOST_CLASSES = 40;

/** Builds by their largest error in at most 40 classes of a round width. */
export function histogramOf(tally: BuildTally): { classDeg: number; counts: number[] } {
  const classDeg = NICE_CLASSES_DEG.find((width) => tally.worstDeg / width < MOST_CLASSES) ?? 10;
  const fine = Math.round(classDeg * CLASSES_PER_DEG);
  const counts = new Array<number>(Math.floor(Math.floor(tally.worstDeg * CLASSES_PER_DEG) / fine) + 1).fill(
    0,
  );
  for (const [i, count] of tally.classes.entries()) {
    if (count > 0) counts[Math.floor(i / fine)]! += count;
  }
  return { classDeg, counts };
}
