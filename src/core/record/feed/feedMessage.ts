import { beginsAsOwn, ownPieces } from '../samples/ownLine.ts';
import { bytesText } from '../mess/byteLines.ts';
import type { Line } from '../line.ts';

/** One message of a station, as one of several workers took it from the broker. */
export interface FeedMessage {
  /** Which worker took it. */
  readonly worker: string;
  /** Rises with every message that this worker took. [-] */
  readonly order: number;
  /** Clock of the worker's machine. [ms UTC] */
  readonly arrivedMs: number;
  /** One or more whole lines. */
  readonly bytes: Uint8Array;
}

/** Numbers of the first and the last line of a message. [-] */
export interface MessageNumbers {
  readonly first: number;
  readonly last: number;
}

/** Lines of a message, or `null` when one of them has no number of its own. n ≥ 1 */
export function numberedLines({ bytes }: Pick<FeedMessage, 'bytes'>): Line[] | null {
  const lines: Line[] = [];
  for (const one of bytesText(bytes).split(/\r?\n/)) {
    if (one === '') continue;
    const [piece, ...others] = beginsAsOwn(one) ? ownPieces(one) : [];
    if (piece?.holds.kind !== 'line' || others.length > 0) return null;
    lines.push(piece.holds.line);
  }
  return lines.length === 0 ? null : lines;
}

/** What a message says of its place in the order of sending; `null` when its lines carry no numbers. [-] */
export function messageNumbers(message: Pick<FeedMessage, 'bytes'>): MessageNumbers | null {
  const lines = numberedLines(message);
  return lines && { first: lines[0]!.lineNumber, last: lines.at(-1)!.lineNumber };
}
