import type { StopSign } from './stop.ts';

/** One file of a result, whole in memory. */
export interface OutputFile {
  /** Path below the folder, `/` between names. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What writing did to the folder. */
export interface Written {
  /** Paths of the files written, in order, the checksum list last. */
  readonly paths: readonly string[];
  /** Files of an earlier run that this run no longer makes, and that were taken away. */
  readonly removed: readonly string[];
  /** Files of an earlier run that this run no longer makes and that someone has changed since: left. */
  readonly kept: readonly string[];
  /** New names of files that stood in the way and were not as an earlier run had written them. */
  readonly setAside: readonly string[];
  /** Files of an earlier run that a part did not touch: they may show an older design. */
  readonly left: readonly string[];
}

/**
 * Where results are put. Every adapter passes test/contracts/outputFolder.ts.
 *
 * Promises: every file appears whole or not at all; nothing of the result appears unless all of it could
 * be written; a file that is not ours, or that someone has changed, is never lost; a result lies beside the list of its SHA-256 checksums.
 */
export interface OutputFolder {
  /**
   * @param folder - Path of the folder; made when missing, its parents too.
   * @param files - Result; paths differ.
   * @param stop - Aborting it before the files appear leaves the folder as it was.
   * @param as - `result` has a list of checksums and replaces the earlier result; `part` leaves the rest of it; `addition` only adds files.
   * @throws `files/not-writable`, `files/disk-full`, `files/not-a-folder` or `files/foreign-checksums`.
   */
  write(
    folder: string,
    files: readonly OutputFile[],
    stop: StopSign,
    as: 'result' | 'part' | 'addition',
  ): Promise<Written>;
}
