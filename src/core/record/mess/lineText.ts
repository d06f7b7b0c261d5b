/** Text of a line's bytes. */
export interface LineText {
  readonly text: string;
  /** The bytes are not UTF-8: each is shown as one character. */
  readonly isForeign: boolean;
}

/**
 * Text of bytes that were kept one character a byte.
 *
 * @param bytes - Characters 0 to 255.
 * @returns UTF-8 decoded; bytes that are no UTF-8 stay as they are, as the old Latin alphabet has them.
 * @check src/core/record/mess/byteLines.test.ts
 */
export function lineText(bytes: string): LineText {
  if (/^[\x00-\x7f]*$/.test(bytes)) return { text: bytes, isForeign: false };
  try {
    const percent = bytes.replace(
      /[\x80-\xff%]/g,
      (c) => `%${c.charCodeAt(0).toString(16).padStart(2, '0')}`,
    );
    return { text: decodeURIComponent(percent), isForeign: false };
  } catch {
    return { text: bytes, isForeign: true };
  }
}

/** `21:00:48.335 -> ` or `[21:00:48.335] ` in front of a line. */
const MONITOR = /^\s*\[?(\d{1,2}):(\d{2}):(\d{2})(?:[.,](\d{1,6}))?\]?\s*(?:->|>|\||:)?\s+(?=\S)/;

/** A line with the time of a serial monitor taken off its front. */
export interface MonitoredLine {
  readonly text: string;
  /** Time of day that the monitor wrote. [ms], `null` without one */
  readonly timeOfDayMs: number | null;
}

/**
 * Takes the time of a serial monitor off a line.
 *
 * @param text - One line.
 * @check src/core/record/mess/byteLines.test.ts
 */
export function withoutMonitorTime(text: string): MonitoredLine {
  const found = MONITOR.exec(text);
  if (!found) return { text, timeOfDayMs: null };
  const [whole, hour, minute, second, part = '0'] = found;
  const timeOfDayMs =
    ((Number(hour) * 60 + Number(minute)) * 60 + Number(second) + Number(`0.${part}`)) * 1000;
  return { text: text.slice(whole.length), timeOfDayMs };
}
