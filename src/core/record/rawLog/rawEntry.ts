/** Sorts of entries, by the number that stands in the frame. */
export const rawKinds = {
  /** A source begins: the payload is a JSON text that says which. */
  begin: 1,
  /** Bytes as they came from the source, line ends and rubbish included. */
  bytes: 2,
  /** The source ended of itself, as a file does; a cut-off last line is then complete. */
  end: 3,
} as const;
/** Name of a sort. */
export type RawKind = keyof typeof rawKinds;

/** What is put into the raw log. */
export interface NewRawEntry {
  readonly kind: RawKind;
  /** Which source: the sequence number of its `begin` entry; 0 in that entry itself. [-] */
  readonly stream: number;
  /** Clock of this machine when the bytes came; `null` for bytes that came from an old file. [ms UTC] */
  readonly arrivedMs: number | null;
  /** At most `PAYLOAD_MOST`. [byte] */
  readonly payload: Uint8Array;
}

/** What the raw log holds. */
export interface RawEntry extends NewRawEntry {
  /** 1 for the first entry of the log, then one more each. [-] */
  readonly seq: number;
}

/** Longest payload of one entry: 1 MiB. [byte] */
export const PAYLOAD_MOST = 1_048_576;
