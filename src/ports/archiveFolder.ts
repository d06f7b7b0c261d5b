import type { SampleStore, SampleWindow } from './sampleStore.ts';

/**
 * Where a record is archived.
 *
 * Promises: each file appears whole or not at all; files of an earlier archive of the same month are replaced.
 */
export interface ArchiveFolder {
  /** Writes a text file as its pieces come. */
  text(path: string, pieces: AsyncIterable<string>): Promise<void>;
  /** Writes the samples of a window as Parquet, with the columns of `archiveColumns`; gives their number. [-] */
  parquet(path: string, store: SampleStore, window: SampleWindow): Promise<number>;
}
