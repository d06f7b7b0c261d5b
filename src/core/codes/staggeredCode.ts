import { VanewrightError } from '../error/index.ts';
import { wrapDegrees, type Degrees } from '../units/index.ts';
import type { CodeTable } from './codeTable.ts';
import type { Track } from './model.ts';

/** A track turned clockwise, its first run the first at or after the index mark. */
function turnedTrack(track: Track, turn: Degrees): Track {
  const starts = track.startsDeg.map((start) => wrapDegrees(start + turn));
  const first = starts.indexOf(Math.min(...starts));
  const inOrder = <T>(list: readonly T[]): T[] => [...list.slice(first), ...list.slice(0, first)];
  return { ...track, startsDeg: inOrder(starts), levels: inOrder(track.levels) };
}

/**
 * The same code with every second channel beside the others, so that the parts of neighbours have room.
 *
 * Track and channel turn together, so every word stays where it was. Half of the stagger goes each way: the head line
 * stays in the middle.
 *
 * @param code - A code with a track for each channel.
 * @param inwardOut - Channels in the order of their radius.
 * @param staggerDeg - From one channel to the next. [deg], 0 for one line
 * @throws `codes/stagger-shares-track` where two channels read one track, which cannot turn with both.
 * @check src/core/codes/staggeredCode.test.ts
 */
export function staggeredCode(code: CodeTable, inwardOut: readonly number[], staggerDeg: Degrees): CodeTable {
  if (staggerDeg === 0) return code;
  if (new Set(code.channels.map(({ track }) => track)).size < code.channels.length) {
    throw new VanewrightError({
      code: 'codes/stagger-shares-track',
      what: 'Channels of this code share a track, so they cannot be moved beside each other.',
      where: 'head.staggerDeg',
      got: `${staggerDeg}° with ${code.channels.length} channels on ${code.tracks.length} tracks`,
      allowed: '0°, or a code with a track for each channel',
      fix: 'Set head.staggerDeg to 0.',
    });
  }
  const turns = new Map(
    inwardOut.map((channel, order) => [channel, (order % 2 === 0 ? -1 : 1) * (staggerDeg / 2)]),
  );
  const tracks = [...code.tracks];
  const channels = code.channels.map(({ track, angleDeg }, channel) => {
    const turn = turns.get(channel) ?? 0;
    tracks[track] = turnedTrack(tracks[track]!, turn);
    return { track, angleDeg: wrapDegrees(angleDeg + turn) };
  });
  return { ...code, tracks, channels };
}
