import { positionCentreDeg, wordAt } from './codeTable.ts';
import type { CodePlan, Level, Track } from './model.ts';
import { runLengthsDeg, trackFromCells } from './track.ts';

/**
 * Fewest channels of two levels that tell `positions` apart, at least 1.
 *
 * Counts bits with whole numbers: a rounded logarithm must not decide how many rings a disc has.
 *
 * @param positions - N. [-], whole, 1..2^31
 * @returns Smallest n >= 1 with 2^n >= positions. [-]
 */
export function tracksFor(positions: number): number {
  return Math.max(1, 32 - Math.clz32(positions - 1));
}

/**
 * One track and one channel a bit, the highest bit first: track 0 is the coarsest.
 *
 * @param words - Number of each position in order. n = positions
 * @param tracks - Bits of each number. [-], 1..30
 */
export function planFromWords(words: readonly number[], tracks: number): CodePlan {
  const bits = Array.from({ length: tracks }, (_, track) => tracks - 1 - track);
  return {
    tracks: bits.map((bit) => trackFromCells(words.map((word) => ((word >> bit) & 1) as Level))),
    channels: bits.map((_, track) => ({ track, angleDeg: 0 })),
  };
}

/**
 * As `planFromWords`, with the tracks sorted so that the coarsest comes first, where a ring is shortest.
 *
 * For searched codes, whose bits come in no order: longest shortest run first, then fewest changes.
 */
export function coarsestFirst(words: readonly number[], tracks: number): CodePlan {
  const plan = planFromWords(words, tracks);
  const ranked = plan.tracks.map((track) => ({
    track,
    shortest: Math.round((Math.min(...runLengthsDeg(track)) * words.length) / 360),
  }));
  ranked.sort((a, b) => b.shortest - a.shortest || a.track.startsDeg.length - b.track.startsDeg.length);
  return { ...plan, tracks: ranked.map(({ track }) => track) };
}

/** A track with its windows and lands exchanged. */
function inverted(track: Track): Track {
  return { ...track, levels: track.levels.map((level) => (1 - level) as Level) };
}

/**
 * The same code with some tracks inverted, so that no light and full light are both illegal, if that can be had.
 *
 * Inverting a track changes no boundary, so it costs nothing where the words leave the choice.
 *
 * @param plan - Tracks of two levels. n = tracks, up to 16
 */
export function withFaultsSeen(plan: CodePlan, positions: number): CodePlan {
  const words = new Set(
    Array.from({ length: positions }, (_, k) => wordAt(plan, positionCentreDeg(k, positions))),
  );
  const reads = (inverts: number, level: number): string =>
    plan.channels.map(({ track }) => level ^ ((inverts >> track) & 1)).join('');
  for (let inverts = 0; inverts < 2 ** (plan.tracks.length - 1); inverts++) {
    if (words.has(reads(inverts, 0)) || words.has(reads(inverts, 1))) continue;
    return { ...plan, tracks: plan.tracks.map((track, i) => ((inverts >> i) & 1 ? inverted(track) : track)) };
  }
  return plan;
}
