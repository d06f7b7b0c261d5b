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
  /** Files of an earlier run that someone has changed since, and that were therefore left. */
  readonly kept: readonly string[];
}

/**
 * Where results are put. Every adapter passes test/contracts/outputFolder.ts.
 *
 * Promises: every file appears whole or not at all; nothing of the result appears unless all of it could
 * be written; files that are not ours are left alone; a result lies beside the list of its SHA-256 checksums.
 */
export interface OutputFolder {
  /**
   * @param folder - Path of the folder; made when missing, its parents too.
   * @param files - Result; paths differ.
   * @param stop - Aborting it before the files appear leaves the folder as it was.
   * @param as - `result` has a list of checksums and replaces the earlier result; `addition` only adds files.
   * @throws `files/not-writable`, `files/disk-full` or `files/not-a-folder`.
   */
  write(
    folder: string,
    files: readonly OutputFile[],
    stop: StopSign,
    as: 'result' | 'addition',
  ): Promise<Written>;
}
