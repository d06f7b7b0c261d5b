/** Part of a record. [ms UTC] */
export interface WordedPeriod {
  readonly fromMs: number;
  readonly untilMs: number;
}

/** Start of the year, month or day that is named, and of the one after it. */
function calendarPeriod(words: string): WordedPeriod | null {
  const parts = /^(\d{4})(?:-(\d\d)(?:-(\d\d))?)?$/.exec(words);
  if (!parts) return null;
  const [year, month, day] = parts.slice(1).map((part) => (part === undefined ? null : Number(part)));
  const at = (y: number, m: number, d: number): number => Date.UTC(y, m - 1, d);
  const fromMs = at(year!, month ?? 1, day ?? 1);
  const untilMs =
    month === null
      ? at(year! + 1, 1, 1)
      : day === null
        ? at(year!, month! + 1, 1)
        : at(year!, month!, day! + 1);
  const isReal = new Date(fromMs).toISOString().startsWith(words); // 2026-13 and 2026-02-30 are none
  return isReal ? { fromMs, untilMs } : null;
}

/**
 * Period of its words: a year, a month, a day, or `START/END` of ISO 8601.
 *
 * @returns `null` where the words are no period. [ms UTC]
 */
export function periodOfWords(words: string): WordedPeriod | null {
  const [first, second, ...more] = words.split('/');
  if (second === undefined) return calendarPeriod(words);
  const [fromMs, untilMs] = [Date.parse(first!), Date.parse(second)];
  return more.length === 0 && fromMs < untilMs ? { fromMs, untilMs } : null;
}
