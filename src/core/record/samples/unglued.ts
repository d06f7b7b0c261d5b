import type { TableLayout } from '../mess/tableLayout.ts';
import type { ZoneClock } from '../time/zoneClock.ts';
import { rowTime } from './tableTime.ts';
import { rowValues } from './tableValues.ts';

/** The time of the second row must follow the first by the usual step, this nearly. [share] */
const STEP_SHARE = 0.2;
/** Any speed will do to see whether a row can be read. [m/s] */
const ANY_SPEED = 1e9;

/**
 * Two rows that stood on one line, parted where the time of the second follows the first by the usual step.
 *
 * @param fields - One less than two rows have.
 * @param beforeMs - Instant of the row before. [ms UTC]
 * @param stepMs - Usual time between rows. [ms]
 * @returns `null` when nothing proves one place and only one.
 */
export function unglued(
  fields: readonly string[],
  layout: TableLayout,
  zone: ZoneClock,
  beforeMs: number | null,
  stepMs: number | null,
): string[][] | null {
  const { width } = layout;
  if (fields.length !== 2 * width - 1 || stepMs === null || width < 2) return null;
  const joined = fields[width - 1]!;
  const ways: string[][][] = [];
  for (let cut = 1; cut < joined.length; cut++) {
    const first = [...fields.slice(0, width - 1), joined.slice(0, cut)];
    const second = [joined.slice(cut), ...fields.slice(width)];
    const times = [first, second].map((row) => instantOf(row, layout, zone, beforeMs));
    if (times[0] === null || times[1] === null) continue;
    // 36,0|02.05. and 36,00|2.05. both could be: the second time is written as the first is.
    if (/[^\d]/.test(first[0]!) && shapeOf(second[0]!) !== shapeOf(first[0]!)) continue;
    if (Math.abs(times[1]! - times[0]! - stepMs) > STEP_SHARE * stepMs) continue;
    const isReadable = [first, second].every(
      (row) => !('dropped' in rowValues(row, layout, null, ANY_SPEED)),
    );
    if (isReadable) ways.push([first, second]);
  }
  return ways.length === 1 ? ways[0]! : null;
}

/** How a text is written, whatever its digits are. */
function shapeOf(text: string): string {
  return text.replace(/\d/g, '9');
}

function instantOf(
  row: readonly string[],
  layout: TableLayout,
  zone: ZoneClock,
  beforeMs: number | null,
): number | null {
  const time = rowTime(row, layout, zone, beforeMs);
  if (time === null) return null;
  if ('atMs' in time) return time.atMs;
  return 'count' in time ? time.count * time.msPerCount : time.unset;
}
