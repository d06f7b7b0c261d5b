import type { Level } from '../../codes/index.ts';
import {
  markReaderOf,
  seenMarks,
  type HeadPlan,
  type MarkChange,
  type MarkReader,
  type MarkVariation,
} from '../../head/index.ts';
import { radToDeg } from '../../units/index.ts';
import { spreadOf } from './switchShifts.ts';

/**
 * Farthest that what a channel differs in moves the place where one mark is read as the next, of all that meet on its track,
 * halfway between both ways round.
 *
 * @returns `Infinity` where a mark is then no longer read as what it is. [deg]
 * @source derived: T(x) = share of the coming mark at which the reader changes, before and after.
 */
export function markShiftDeg(head: HeadPlan, variation: MarkVariation): number {
  const { marks, spec, circuit, board, levels } = head;
  const parts = { detector: spec.detector, circuit, board, resistorOhm: levels.resistorOhm, plan: marks! };
  const [drawn, changed] = [markReaderOf(parts), markReaderOf(parts, variation)];
  const shifts = head.channels.map(({ track, radiusMm }) => {
    const spread = spreadOf(head, radiusMm);
    const angle = (x: number): number => Math.asin(Math.max(-1, Math.min(1, x / radiusMm)));
    /** Where each change of a passage lies, or `null` where a level is left out. */
    const moved = (from: Level, to: Level, mirrored: boolean): number[] => {
      // What a mark reads as by itself, at share 0, is no change.
      const changesOf = (reader: MarkReader): MarkChange[] =>
        reader.changes(from, to).filter(({ share }) => share > 0);
      const [before, after] = [changesOf(drawn), changesOf(changed)];
      if (before.length !== after.length) return [Infinity];
      return before.map(({ share, level }, i) => {
        const now = after[i]!;
        if (now.level !== level) return Infinity;
        const place = (at: number): number => angle(spread.edgeAt(mirrored ? 1 - at : at));
        return place(now.share) - place(share);
      });
    };
    const pairs = meetingMarks(head, track);
    return Math.max(
      0,
      ...pairs.map(([from, to]) => {
        const ahead = moved(from, to, false);
        const back = moved(to, from, true).reverse();
        return Math.max(...ahead.map((x, i) => Math.abs(x + (back[i] ?? x)) / 2));
      }),
    );
  });
  return radToDeg(Math.max(...shifts));
}

/** Levels that stand side by side on a track, in the order of the disc angle. */
function meetingMarks({ disc, spec }: HeadPlan, track: number): (readonly [Level, Level])[] {
  const { levels } = seenMarks(disc, track, spec.aperture, spec.penumbra);
  return levels.map((level, i) => [levels.at(i - 1)!, level] as const);
}
