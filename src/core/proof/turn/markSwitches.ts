import type { Level } from '../../codes/index.ts';
import { markShares, type MarkReader, type SeenMarks } from '../../head/index.ts';
import { degToRad, radToDeg, wrapDegrees } from '../../units/index.ts';
import type { Sense } from './softMarks.ts';

/** A change of what a channel of three marks reads: counter-clockwise of `atDeg` it is `before`, clockwise `after`. */
export interface MarkSwitch {
  readonly atDeg: number;
  readonly before: Level;
  readonly after: Level;
}

/** Where a channel of three marks changes in one turn. */
export interface MarkSwitches {
  readonly switches: readonly MarkSwitch[];
  /** What it reads all the way round when it never changes. */
  readonly levelThroughout: Level;
}

/**
 * Changes of a channel that tells three marks apart and keeps its last level over what it rejects.
 *
 * A channel starts where its reading leaves no doubt; where it never does, it reads 0, as after switching on.
 *
 * @source derived: at a lone edge the share of the coming mark is T(x), and the reader's changes lie at stated shares.
 * @check src/core/proof/turn/markSwitches.test.ts (a fine scan of the shares)
 */
export function markSwitches(marks: SeenMarks, reader: MarkReader, sense: Sense): MarkSwitches {
  const way = sense === 'growing' ? 1 : -1;
  const passages = areLone(marks) ? edgePassages(marks, reader, way) : scannedPassages(marks, reader, way);
  const start = passages.findIndex(({ reads }) => reads !== null);
  if (start < 0) return { switches: [], levelThroughout: firstLevel(marks, reader) };
  let level = passages[start]!.reads!;
  const switches: MarkSwitch[] = [];
  for (let step = 1; step <= passages.length; step++) {
    const { atDeg, reads } = passages[(start + step) % passages.length]!;
    if (reads === null || reads === level) continue;
    switches.push({
      atDeg,
      ...(way > 0 ? { before: level, after: reads } : { before: reads, after: level }),
    });
    level = reads;
  }
  return { switches, levelThroughout: level };
}

/** A place passed, in the order of passing, and what is read from there on; `null` where it is rejected. */
interface Passage {
  readonly atDeg: number;
  readonly reads: Level | null;
}

function firstLevel(marks: SeenMarks, reader: MarkReader): Level {
  return reader.judge(markShares(marks, 0)) ?? 0;
}

/** True when a spot never touches more than one edge. */
function areLone({ edgesDeg, movesMm, radiusMm, spread }: SeenMarks): boolean {
  const places = edgesDeg.map((edge, i) => degToRad(edge) * radiusMm + movesMm[i]!);
  return places.every((place, i) => {
    const next = places[i + 1] ?? places[0]! + 2 * Math.PI * radiusMm;
    return next - place >= 2 * spread.reachMm;
  });
}

function edgePassages(marks: SeenMarks, reader: MarkReader, way: 1 | -1): Passage[] {
  const { edgesDeg, levels, movesMm, radiusMm, spread } = marks;
  const order = edgesDeg.map((_, i) => i);
  if (way < 0) order.reverse();
  return order.flatMap((i) => {
    const [before, after] = [levels.at(i - 1)!, levels[i]!];
    const [from, to] = way > 0 ? [before, after] : [after, before];
    return reader.changes(from, to).map(({ share, level }) => {
      const x = spread.edgeAt(way > 0 ? share : 1 - share);
      return { atDeg: edgesDeg[i]! + radToDeg(Math.asin((movesMm[i]! - x) / radiusMm)), reads: level };
    });
  });
}

/** Places looked at while one edge passes the spot. */
const LOOKS = 64;
/** A place is halved down to this. [deg] */
const ROOT_DEG = 1e-7;

function scannedPassages(marks: SeenMarks, reader: MarkReader, way: 1 | -1): Passage[] {
  const { edgesDeg, radiusMm, spread, movesMm } = marks;
  const reads = (angle: number): Level | null => reader.judge(markShares(marks, angle));
  const angles = edgesDeg
    .flatMap((edge, i) =>
      Array.from({ length: LOOKS + 1 }, (_, look) => {
        const x = (2 * (look / LOOKS) - 1) * spread.reachMm - movesMm[i]!;
        return wrapDegrees(edge - radToDeg(Math.asin(Math.max(-1, Math.min(1, x / radiusMm)))));
      }),
    )
    .sort((a, b) => way * (a - b));
  return angles.map((to, i) => {
    const from = angles.at(i - 1)!;
    const now = reads(to);
    if (now === null || now === reads(from)) return { atDeg: to, reads: now };
    let span = way * wrapDegrees(way * (to - from));
    let near = from;
    while (Math.abs(span) > ROOT_DEG) {
      span /= 2;
      if (reads(near + span) !== now) near += span;
    }
    return { atDeg: wrapDegrees(near + span), reads: now };
  });
}
