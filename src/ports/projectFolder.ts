/** A file of the project as it was read. */
export interface ProjectFile {
  readonly bytes: Uint8Array;
  /** Names this content: the SHA-256 of it, in hexadecimal. */
  readonly version: string;
}

/** A file of the project in a list. */
export interface ListedFile {
  /** Path below the folder, `/` between names. */
  readonly path: string;
  /** [byte] */
  readonly bytes: number;
  /** [ms UTC] */
  readonly changedMs: number;
}

/**
 * The folder that one project lives in: its instrument file, what lies beside it, its recordings.
 *
 * Promises: nothing outside the folder is read, listed or written, whatever the path says and wherever a link leads; only
 * kinds of files that belong to a project; a file holds its old content or the new one, whole, whatever happens.
 */
export interface ProjectFolder {
  /** Last name of its path, for the maker's eyes. */
  readonly name: string;
  /** Files of the project, by path; `isWhole` is false when there are more than are listed. */
  list(): Promise<{ readonly files: readonly ListedFile[]; readonly isWhole: boolean }>;
  /**
   * A file, or `null` when there is none.
   *
   * @throws `open/outside-project`, `open/file-kind`, `open/too-large`
   */
  read(path: string, mostBytes: number): Promise<ProjectFile | null>;
  /**
   * Puts content in the place of a file, or makes the file.
   *
   * @param version - The content that the change began from; `null` for a file that must not be there yet.
   * @returns Version of the new content.
   * @throws `open/outside-project`, `open/file-kind`, `open/changed-elsewhere`, `files/not-writable`, `files/disk-full`
   */
  write(path: string, bytes: Uint8Array, version: string | null): Promise<string>;
}
