import type { HeadPlan } from '../../head/index.ts';
import { turnBetween } from '../../units/index.ts';
import { fitAngles, type FittedAngles } from '../angles/fitAngles.ts';
import type { Law } from '../angles/likeliestLaw.ts';
import type { ColumnLevels } from '../levels/channelLevels.ts';
import type { Stretch } from '../reading/recording.ts';
import type { CodeWalk } from './codeWalk.ts';
import type { Wiring } from './findWirings.ts';
import { followed, type Followed, type FollowInput } from './followed.ts';
import { edgeWidths, radiusEvidence } from './softness.ts';

/** A wiring with all that speaks for and against it. */
export interface RankedWiring {
  readonly wiring: Wiring;
  readonly followed: Followed;
  /** Channels on another input than drawn, channels that read the other way round. */
  readonly moved: readonly number[];
  readonly inverted: readonly number[];
  /** The disc turns against what the drawing and the maker's word say; `null` when nobody said which way. */
  readonly reversed: boolean | null;
  /** Logarithm of its weight beside the others: what the recording says, less what the maker must have done wrong. */
  readonly weight: number;
}

/** Share by which a wiring may explain fewer steps than the best and still count as equal. [-] */
const EQUAL_SHARE = 0.02;
/** Logarithm of how unlikely it is that a maker moves a wire, turns a sensor round, or mounts the disc face down. Own choice */
const UNLIKELY = { moved: 2.5, inverted: 3, reversed: 2.8, elsewhere: 12 } as const;
/** The edges speak about wirings only as far as the drawing is known: no more than this. */
const MOST_EVIDENCE = 40;

/** What wirings are ranked by. */
export interface RankInput {
  readonly walk: CodeWalk;
  readonly head: HeadPlan;
  readonly stretches: readonly Stretch[];
  readonly inputs: readonly FollowInput[];
  readonly levels: readonly ColumnLevels[];
  /** Column on which the drawing has each channel. n = channels */
  readonly drawnColumns: readonly number[];
  /** The drawing itself has columns read 1 where the code has 0: light gives low counts, or windows are the 0. */
  readonly drawnInverted: boolean;
  readonly patternedFace: 'up' | 'down';
  /** Disc angle under the reference line at the very first row, where the maker has set it; else `null`. [deg] */
  readonly startsAtDeg: number | null;
}

/** Share of the steps that go to a neighbour, in words that the code has. [-] */
export function explainedShare({ neighbourly, steps, legalMs, allMs }: Followed): number {
  return steps === 0 || allMs === 0 ? 0 : (neighbourly / steps) * (legalMs / allMs);
}

/**
 * Whether the disc turned against what the maker said of the files.
 *
 * A vane turned clockwise brings smaller disc angles under the head when the patterned face looks up, as `heading.ts` has it.
 */
function isReversed(
  { travelled }: Followed,
  stretches: readonly Stretch[],
  face: 'up' | 'down',
): boolean | null {
  let agreement = 0;
  for (const [i, { turned }] of stretches.entries()) {
    if (turned === null) continue;
    const [growing, falling] = travelled[i]!;
    const expected = (turned === 'clockwise') === (face === 'up') ? falling - growing : growing - falling;
    agreement += expected;
  }
  return agreement === 0 ? null : agreement < 0;
}

/** Whether the disc began somewhere else than where the maker had set it; a step and a half is forgiven. */
function startsElsewhere({ firstGap }: Followed, { walk, startsAtDeg }: RankInput): boolean {
  if (startsAtDeg === null || firstGap === null) return false;
  const stepDeg = 360 / walk.code.positions;
  return (
    Math.abs(turnBetween(walk.boundaries[firstGap]!.angleDeg + stepDeg / 2, startsAtDeg)) > 1.5 * stepDeg
  );
}

/**
 * Wirings that explain the recording, most believable first.
 *
 * Many codes can be rewired so that they look like themselves turned or mirrored; then the recording alone does not
 * tell, and what decides is how wide the edges of each track are, on which side of its place each edge stands, which
 * way the maker says the vane was turned, and last the fewest mistakes.
 */
export function rankWirings(wirings: readonly Wiring[], input: RankInput): RankedWiring[] {
  const { walk, inputs } = input;
  const all = wirings.map((wiring) => ({ wiring, followed: followed(walk, wiring, inputs) }));
  const best = all.reduce((most, one) => Math.max(most, explainedShare(one.followed)), 0);
  const equal = all.filter((one) => explainedShare(one.followed) >= best - EQUAL_SHARE);
  const law = equal.length > 1 ? lawOf(equal, input) : null;
  const evidence = equal.map((one) => (law ? evidenceFor(one, law, input) : 0));
  const most = Math.max(...evidence);
  return equal
    .map(({ wiring, followed: path }, i): RankedWiring => {
      const moved = wiring.channels.flatMap((wire, c) =>
        wire && wire.column !== input.drawnColumns[c] ? [c] : [],
      );
      const inverted = wiring.channels.flatMap((wire, c) =>
        wire && wire.inverted !== input.drawnInverted ? [c] : [],
      );
      const reversed = isReversed(path, input.stretches, input.patternedFace);
      const mistakes =
        UNLIKELY.moved * moved.length +
        UNLIKELY.inverted * inverted.length +
        (reversed ? UNLIKELY.reversed : 0) +
        (startsElsewhere(path, input) ? UNLIKELY.elsewhere : 0);
      const weight = Math.max(evidence[i]! - most, -MOST_EVIDENCE) - mistakes;
      return { wiring, followed: path, moved, inverted, reversed, weight };
    })
    .sort((a, b) => b.weight - a.weight);
}

/** One law of motion for all, so that they can be compared. */
function lawOf(
  all: readonly { wiring: Wiring; followed: Followed }[],
  { walk, head }: RankInput,
): Law | null {
  const whole = all.find(({ wiring }) => wiring.channels.every((wire) => wire !== null));
  return whole ? (fitAngles(walk, head, whole.followed.crossings)?.law ?? null) : null;
}

function evidenceFor(one: { wiring: Wiring; followed: Followed }, law: Law, input: RankInput): number {
  if (one.wiring.channels.some((wire) => wire === null)) return 0;
  const angles = fitAngles(input.walk, input.head, one.followed.crossings, [], law);
  if (!angles) return 0;
  return angles.logLikelihood + softness(one.wiring, angles, input);
}

function softness(wiring: Wiring, angles: FittedAngles, { stretches, levels, head }: RankInput): number {
  const widths = edgeWidths(wiring, angles.chains, stretches, levels);
  return radiusEvidence(
    widths,
    head.channels.map(({ radiusMm }) => radiusMm),
  );
}

/** How sure it is that the first of some ranked wirings is the right one, against the others. [-], 0..1 */
export function confidenceOf(ranked: readonly RankedWiring[]): number {
  const [first] = ranked;
  if (!first) return 0;
  return 1 / ranked.reduce((sum, { weight }) => sum + Math.exp(weight - first.weight), 0);
}
