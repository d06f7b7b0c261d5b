import { LINE_TAG, parseLine } from '../../record/index.ts';
import { shown, WRAP, type Note, type RawFile, type RawRow } from './rawRows.ts';
import type { Repair } from './recording.ts';
import type { TextLine } from './textLines.ts';

/** True when a file holds lines of our own program. */
export function areOurLines(lines: readonly TextLine[]): boolean {
  const ours = lines.filter(({ text }) => text.startsWith(`${LINE_TAG} `)).length;
  return ours > 0 && ours >= 0.3 * lines.length;
}

/** Rows of our own line format: counts by channel, milliseconds, and a check value that tells every spoilt line. */
export function ourRows(file: string, lines: readonly TextLine[]): RawFile {
  const repairs: Repair[] = [];
  const note: Note = (line, kind, what) => void repairs.push({ file, line, kind, what });
  const good = lines.map((line) => ({ line, parsed: parseLine(line.text) }));
  const channels = usualChannels(good.map(({ parsed }) => (parsed.ok ? parsed.line.counts.length : 0)));
  const rows: RawRow[] = [];
  let last = -1;
  for (const { line, parsed } of good) {
    if (!parsed.ok) {
      note(line.number, 'refused-line', `Left out "${shown(line.text)}": ${parsed.refusal.what}`);
      continue;
    }
    const { counts, sinceStartMs, lineNumber } = parsed.line;
    if (counts.length !== channels) {
      note(
        line.number,
        'column-count',
        `Left out a line of ${counts.length} channels among lines of ${channels}.`,
      );
      continue;
    }
    rows.push({
      line: line.number,
      clock: sinceStartMs,
      values: counts,
      markDeg: null,
      startsAnew: lineNumber < last && last < WRAP - 1000,
    });
    last = lineNumber;
  }
  const columns = Array.from({ length: channels }, (_, c) => `column ${c}`);
  return { file, content: 'counts', columns, clockMs: 1, wrapsAt: WRAP, rows, repairs, lines: lines.length };
}

/** The number of channels that most lines have. */
function usualChannels(counts: readonly number[]): number {
  const often = new Map<number, number>();
  for (const count of counts) if (count > 0) often.set(count, (often.get(count) ?? 0) + 1);
  return [...often].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}
