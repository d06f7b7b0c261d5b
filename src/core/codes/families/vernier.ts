import type { CodeBuild, CodeFamily } from '../family.ts';
import { MOST_CHANNELS, POSITIONS_RANGE, type Channel } from '../model.ts';
import { withFaultsSeen } from '../wordTracks.ts';
import { comb } from './countingWheel.ts';
import { nearestOf } from './refusals.ts';

/** Windows of the two combs, without common divisor, and how often the two phases tell the same thing. */
export interface Combs {
  readonly fine: number;
  readonly coarse: number;
  readonly repeats: number;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * The pair of combs that needs the fewest channels for a count: N = 4 * fine * coarse * repeats.
 *
 * @returns `null` where 4 does not divide N, N is below 8, or no pair serves with `MOST_CHANNELS` channels.
 * @source derived: see `vernier`.
 */
export function combsFor(positions: number): Combs | null {
  if (positions % 4 !== 0) return null;
  const product = positions / 4;
  let best: Combs | null = null;
  const channels = ({ fine, coarse, repeats }: Combs): number => (fine + coarse) * repeats;
  for (let coarse = 1; coarse * (coarse + 1) <= product; coarse++) {
    for (let fine = coarse + 1; fine * coarse <= product; fine++) {
      if (product % (fine * coarse) !== 0 || gcd(fine, coarse) !== 1) continue;
      const combs = { fine, coarse, repeats: product / (fine * coarse) };
      if (!best || channels(combs) < channels(best)) best = combs;
    }
  }
  return best && channels(best) <= MOST_CHANNELS ? best : null;
}

/** The nearest counts below and above for which there is a pair of combs. */
function nearestCounts(positions: number): number[] {
  let below = positions - 1;
  while (below > 0 && !combsFor(below)) below -= 1;
  let above = positions + 1;
  while (above <= POSITIONS_RANGE.most && !combsFor(above)) above += 1;
  return [below, above];
}

/**
 * Largest error of either phase at which the period is still told right, both equal.
 *
 * @param p - Periods of the one track in a turn. [-], without common divisor with q
 * @param q - Periods of the other. [-]
 * @returns Below this, |p * errorQ - q * errorP| stays below one half. [periods]
 * @source derived from K = round(p * phaseQ - q * phaseP) = q * k - p * l, which is different for every period.
 * @check test/published/vernier
 */
export function vernierTolerancePeriods(p: number, q: number): number {
  return 1 / (2 * (p + q));
}

/** Channels on one comb: spread over its phase, each moved by whole periods so that they stand clear round the turn. */
function phaseChannels(track: number, windows: number, channels: number, stepDeg: number): Channel[] {
  const periodsApart = Math.max(1, Math.floor(windows / channels));
  return Array.from({ length: channels }, (_, c) => {
    const periods = (c * periodsApart) % windows;
    return { track, angleDeg: c * stepDeg + (periods * 360) / windows };
  });
}

function build(positions: number): CodeBuild {
  const { fine, coarse, repeats } = combsFor(positions)!;
  const stepDeg = 720 / positions;
  const half = stepDeg / 2;
  // Every second step is told by the one comb, the steps between by the other, half a step later.
  const fineChannels = phaseChannels(1, fine, coarse * repeats, stepDeg);
  const coarseChannels = phaseChannels(0, coarse, fine * repeats, stepDeg).map(({ track, angleDeg }) => ({
    track,
    angleDeg: angleDeg + half,
  }));
  return withFaultsSeen(
    { tracks: [comb(coarse), comb(fine)], channels: [...coarseChannels, ...fineChannels] },
    positions,
  );
}

/**
 * Two plain combs whose numbers of windows have no common divisor, each read at several phases.
 *
 * q * e channels on the comb of p windows change 2pqe times a turn, and so do p * e channels on the comb of q windows;
 * half a step apart, they give N = 4pqe positions with one change a step. The pair of phases is different at every
 * position because 2qe and 2pe steps come together only after 2pqe of them. Windows are N/2p steps wide.
 *
 * @source derived: P. Vernier's principle of two scales, told by on-off channels.
 * @check test/published/vernier
 */
export const vernier: CodeFamily = {
  name: 'vernier',
  title: 'two-track vernier',
  options: [],
  refusal: (positions) => {
    if (combsFor(positions)) return null;
    const nearest = nearestOf(nearestCounts(positions));
    return {
      code: 'codes/no-vernier',
      what:
        'Two combs without a common divisor, read by on-off channels, give four positions for every pair of their windows, ' +
        `so the positions are a multiple of 4, 8 or more; and ${MOST_CHANNELS} channels are the most that can be wired.`,
      allowed: `a multiple of 4 that two combs share well, such as ${nearest}`,
      fix: `Set need.positions to ${nearest}.`,
    };
  },
  build,
};
