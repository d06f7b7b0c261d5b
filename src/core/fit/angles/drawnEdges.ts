import type { HeadPlan } from '../../head/index.ts';
import { exactTurn, type ReadStretch } from '../../proof/index.ts';
import { turnBetween } from '../../units/index.ts';
import type { CodeWalk } from '../wiring/codeWalk.ts';

/** A change of one channel in the turn of the drawing. */
interface DrawnChange {
  readonly angleDeg: number;
  readonly channel: number;
  readonly risesTo: 0 | 1;
}

function changesIn(stretches: readonly ReadStretch[]): DrawnChange[] {
  return stretches.flatMap(({ word, fromDeg }, i) => {
    const before = stretches.at(i - 1)!.word;
    return Array.from(word).flatMap((digit, channel): DrawnChange[] =>
      digit === before[channel] ? [] : [{ angleDeg: fromDeg, channel, risesTo: digit === '1' ? 1 : 0 }],
    );
  });
}

/**
 * How far from its boundary the drawing has each edge pass the middle between the levels.
 *
 * Windows that come out wider, thresholds away from half light and marks that share the spot all move edges in the
 * drawing already; the middle of both ways round is taken, since hysteresis moves them apart. [deg]
 */
export function drawnOffsets(walk: CodeWalk, head: HeadPlan): (boundary: number, channel: number) => number {
  const turn = exactTurn(head);
  const ways = [changesIn(turn.growing), changesIn(turn.falling)];
  const furthest = 360 / walk.code.positions;
  const offsets = new Map<number, number>();
  for (const [boundary, { angleDeg, changing, risesTo }] of walk.boundaries.entries()) {
    for (let channel = 0; channel < walk.channels; channel++) {
      if (((changing >>> channel) & 1) === 0) continue;
      const wanted = (risesTo >>> channel) & 1;
      const found = ways.map((changes) => nearest(changes, channel, wanted, angleDeg));
      if (found.some((offset) => offset === null || Math.abs(offset) > furthest)) continue;
      offsets.set(boundary * 64 + channel, (found[0]! + found[1]!) / 2);
    }
  }
  return (boundary, channel) => offsets.get(boundary * 64 + channel) ?? 0;
}

function nearest(
  changes: readonly DrawnChange[],
  channel: number,
  risesTo: number,
  angleDeg: number,
): number | null {
  let best: number | null = null;
  for (const change of changes) {
    if (change.channel !== channel || change.risesTo !== risesTo) continue;
    const offset = turnBetween(angleDeg, change.angleDeg);
    if (best === null || Math.abs(offset) < Math.abs(best)) best = offset;
  }
  return best;
}
