import { crc32c } from './crc32c.ts';
import { PAYLOAD_MOST, rawKinds, type RawEntry, type RawKind } from './rawEntry.ts';

/**
 * Layout of a frame, numbers with the lowest byte first:
 * 0 sign (2), 2 version (1), 3 kind (1), 4 payload length (4), 8 stream (8), 16 sequence number (8),
 * 24 arrival in ms UTC, NaN for none (8), 32 check of bytes 0 to 31 and the payload (4), 36 payload.
 */
export const FRAME_HEAD = 36;
/** First two bytes of a frame; no text and no run of zeros holds them. */
const SIGN_0 = 0xd7;
const SIGN_1 = 0x91;
const VERSION = 1;

const kindNames = new Map(
  Object.entries(rawKinds).map(([name, value]) => [value as number, name as RawKind]),
);

/**
 * One entry as it is written to the log, with its check value.
 *
 * @param entry - Payload at most 1 MiB, numbers below 2^53.
 * @returns Head and payload. [byte]
 * @check src/core/record/rawLog/frame.test.ts
 */
export function frameOf(entry: RawEntry): Uint8Array {
  const frame = new Uint8Array(FRAME_HEAD + entry.payload.length);
  const view = new DataView(frame.buffer);
  frame[0] = SIGN_0;
  frame[1] = SIGN_1;
  frame[2] = VERSION;
  frame[3] = rawKinds[entry.kind];
  view.setUint32(4, entry.payload.length, true);
  view.setFloat64(8, entry.stream, true);
  view.setFloat64(16, entry.seq, true);
  view.setFloat64(24, entry.arrivedMs ?? Number.NaN, true);
  frame.set(entry.payload, FRAME_HEAD);
  view.setUint32(32, crc32c(entry.payload, crc32c(frame.subarray(0, 32))), true);
  return frame;
}

/** The entry whose frame begins at `at`; `null` where there is no whole sound frame. */
function entryAt(bytes: Uint8Array, view: DataView, at: number): RawEntry | null {
  if (at + FRAME_HEAD > bytes.length) return null;
  if (bytes[at] !== SIGN_0 || bytes[at + 1] !== SIGN_1 || bytes[at + 2] !== VERSION) return null;
  const kind = kindNames.get(bytes[at + 3]!);
  const length = view.getUint32(at + 4, true);
  const end = at + FRAME_HEAD + length;
  if (!kind || length > PAYLOAD_MOST || end > bytes.length) return null;
  const payload = bytes.subarray(at + FRAME_HEAD, end);
  if (crc32c(payload, crc32c(bytes.subarray(at, at + 32))) !== view.getUint32(at + 32, true)) return null;
  const arrived = view.getFloat64(at + 24, true);
  return {
    kind,
    stream: view.getFloat64(at + 8, true),
    seq: view.getFloat64(at + 16, true),
    arrivedMs: Number.isNaN(arrived) ? null : arrived,
    payload,
  };
}

/** A stretch of a segment that holds no sound frame. */
export interface Damage {
  /** Where it begins in the segment. [byte] */
  readonly at: number;
  /** [byte] */
  readonly bytes: number;
  /** `tail` reaches to the end, as a power cut leaves it; `middle` has sound frames behind it. */
  readonly place: 'middle' | 'tail';
  /** All zeros, the begin of a frame that was cut short, or anything else. */
  readonly looks: 'zeroed' | 'torn' | 'garbage';
}

/** What a segment holds. */
export interface ScannedFrames {
  readonly entries: readonly RawEntry[];
  readonly damage: readonly Damage[];
  /** End of the last sound frame: writing goes on here. [byte] */
  readonly soundBytes: number;
}

function looksOf(bytes: Uint8Array, from: number, to: number): Damage['looks'] {
  if (bytes.subarray(from, to).every((byte) => byte === 0)) return 'zeroed';
  return bytes[from] === SIGN_0 && (from + 1 === to || bytes[from + 1] === SIGN_1) ? 'torn' : 'garbage';
}

/** Where the next sound frame begins, or the end. */
function nextSound(bytes: Uint8Array, view: DataView, from: number): number {
  for (let at = bytes.indexOf(SIGN_0, from); at >= 0; at = bytes.indexOf(SIGN_0, at + 1)) {
    if (entryAt(bytes, view, at)) return at;
  }
  return bytes.length;
}

/**
 * Every sound entry of a segment, in order, and what lies between them; nothing in it can make this fail.
 *
 * @param bytes - A segment from its first frame on. [byte]
 * @returns Entries (their payloads share the memory of `bytes`), damage, and the end of what is sound.
 * @check src/core/record/rawLog/frame.test.ts
 */
export function scanFrames(bytes: Uint8Array): ScannedFrames {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries: RawEntry[] = [];
  const damage: Damage[] = [];
  let at = 0;
  let soundBytes = 0;
  while (at < bytes.length) {
    const entry = entryAt(bytes, view, at);
    if (entry) {
      entries.push(entry);
      at += FRAME_HEAD + entry.payload.length;
      soundBytes = at;
      continue;
    }
    const next = nextSound(bytes, view, at + 1);
    damage.push({
      at,
      bytes: next - at,
      place: next === bytes.length ? 'tail' : 'middle',
      looks: looksOf(bytes, at, next),
    });
    at = next;
  }
  return { entries, damage, soundBytes };
}
