import type { SampleStore, SampleWindow } from './sampleStore.ts';

/** What a file of an archive says of itself when it is read back: rows and read values [-], sums [deg], [m/s]. */
export interface ArchiveFigures {
  readonly rows: number;
  readonly headings: number;
  readonly speeds: number;
  readonly headingSum: number;
  readonly speedSum: number;
}

/**
 * Where a record is archived.
 *
 * Promises: each file appears whole or not at all; files of an earlier archive of the same month are replaced.
 */
export interface ArchiveFolder {
  /** Writes a text file as its pieces come. */
  text(path: string, pieces: AsyncIterable<string>): Promise<void>;
  /** Reads a Parquet file of this folder from the disk. */
  figures(path: string): Promise<ArchiveFigures>;
  /** Writes the samples of a window as Parquet, with the columns of `archiveColumns`; gives their number. [-] */
  parquet(path: string, store: SampleStore, window: SampleWindow): Promise<number>;
}
