import type { StreamBegin } from '../core/record/index.ts';

/** Bytes of one source as they came. */
export interface SourceBytes {
  readonly begin: StreamBegin;
  readonly bytes: Uint8Array;
  /** Clock of this machine; `null` for bytes of an old file. [ms UTC] */
  readonly arrivedMs: number | null;
  /** The source gave them before and did not hear that they were safe. */
  readonly isAgain?: boolean;
  /** The source ends with these bytes. */
  readonly isEnd: boolean;
  /** How much of a source whose size is known has come. [byte] */
  readonly done: { readonly bytes: number; readonly ofBytes: number } | null;
}

/**
 * Where lines come from.
 *
 * Promises: the next bytes are asked for only once `take` has ended for those before, so memory stays bounded; bytes
 * that `take` refused come again from sources that can send again.
 */
export interface LineSource {
  /** What it is, for the maker's eyes. */
  readonly name: string;
  /**
   * Gives everything that comes to `take`, until the source ends or is closed.
   *
   * @throws `log/source-lost`, `log/source-not-found`, and what `take` throws.
   */
  run(take: (bytes: SourceBytes) => Promise<void>): Promise<void>;
  /** Ends `run`; what came is still taken. */
  close(): Promise<void>;
}
