import type { Repair, RecordingFile } from './recording.ts';

/** One line of a file. */
export interface TextLine {
  readonly number: number;
  readonly text: string;
  /** Time of day that a serial monitor wrote in front. [ms], or `null` */
  readonly monitorMs: number | null;
}

/** `21:00:48.335 -> ` or `[21:00:48.335] ` in front of a line. */
const MONITOR = /^\s*\[?(\d{1,2}):(\d{2}):(\d{2})(?:[.,](\d{1,6}))?\]?\s*(?:->|>|\||:)?\s+(?=\S)/;

/**
 * Text of a file as it came from a disk or a serial port.
 *
 * UTF-16 with its mark and UTF-8 are recognised; what is neither keeps one character a byte, so that rubbish at
 * power-on spoils its own line only.
 *
 * @param bytes - The whole file. [byte]
 * @check src/core/fit/reading/textLines.test.ts
 */
export function recordingText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe && bytes.length % 2 === 0 && everySecondIsZero(bytes, 1)) {
    return wide(bytes, true);
  }
  if (first === 0xfe && second === 0xff && bytes.length % 2 === 0 && everySecondIsZero(bytes, 0)) {
    return wide(bytes, false);
  }
  return utf8(bytes) ?? oneEach(bytes);
}

function wide(bytes: Uint8Array, isLittle: boolean): string {
  const units: string[] = [];
  for (let i = 2; i + 1 < bytes.length; i += 2) {
    const [a, b] = [bytes[i]!, bytes[i + 1]!];
    units.push(String.fromCharCode(isLittle ? a | (b << 8) : (a << 8) | b));
  }
  return `\ufeff${units.join('')}`;
}

/** Text of digits has a zero in every second byte; rubbish that begins like a mark has not. */
function everySecondIsZero(bytes: Uint8Array, from: number): boolean {
  let zeros = 0;
  let all = 0;
  for (let i = 2 + from; i < bytes.length; i += 2, all++) zeros += Number(bytes[i] === 0);
  return all > 0 && zeros > 0.9 * all;
}

/** Decoded as UTF-8, or `null` when it is something else. */
function utf8(bytes: Uint8Array): string | null {
  try {
    return decodeURIComponent(percent(bytes));
  } catch {
    return null;
  }
}

function percent(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (const byte of bytes) {
    const isPlain = byte < 0x80 && byte !== 0x25;
    parts.push(isPlain ? String.fromCharCode(byte) : `%${byte.toString(16).padStart(2, '0')}`);
  }
  return parts.join('');
}

function oneEach(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (const byte of bytes) parts.push(String.fromCharCode(byte));
  return parts.join('');
}

/** Lines of a file, whatever ends them, with a serial monitor's times taken off; what was done is listed. */
export function textLines({ name, text }: RecordingFile): { lines: TextLine[]; repairs: Repair[] } {
  const repairs: Repair[] = [];
  const note = (kind: Repair['kind'], what: string): void =>
    void repairs.push({ file: name, line: 0, kind, what });
  let plain = text;
  if (plain.startsWith('\ufeff')) {
    plain = plain.slice(1);
    note('byte-order-mark', 'Left out the byte order mark at the start of the file.');
  }
  const empty = plain.length - plain.replaceAll('\0', '').length;
  if (empty > 0) {
    plain = plain.replaceAll('\0', '');
    note('empty-bytes', `Left out ${empty} empty bytes, as a power cut leaves them.`);
  }
  let stamped = 0;
  const lines = plain.split(/\r\n|\r|\n/).map((line, i) => {
    const monitor = MONITOR.exec(line);
    if (!monitor) return { number: i + 1, text: line.trim(), monitorMs: null };
    stamped += 1;
    const [whole, h, m, s, part = '0'] = monitor;
    const monitorMs = ((Number(h) * 60 + Number(m)) * 60 + Number(s) + Number(`0.${part}`)) * 1000;
    return { number: i + 1, text: line.slice(whole.length).trim(), monitorMs };
  });
  if (stamped > 0)
    note('monitor-times', `Took the serial monitor's own times off the front of ${stamped} lines.`);
  return { lines: lines.filter((line) => line.text !== ''), repairs };
}
