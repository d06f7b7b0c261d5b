/** Where instrument files, and the recordings beside them, are read from. */
export interface InstrumentFiles {
  /**
   * Whole text of a file.
   *
   * Promises: reads at most `mostBytes`; decodes UTF-8 strictly; never changes the file.
   *
   * @throws `files/not-found`, `files/not-readable`, `files/too-large` or `files/not-text`.
   */
  readText(path: string, mostBytes: number): Promise<string>;

  /**
   * Whole content of a file, whatever it holds.
   *
   * Promises: reads at most `mostBytes`; never changes the file.
   *
   * @throws `files/not-found`, `files/not-readable` or `files/too-large`.
   */
  readBytes(path: string, mostBytes: number): Promise<Uint8Array>;

  /** When a file was last changed; ISO 8601, UTC. @throws `files/not-found` */
  changedAt(path: string): Promise<string>;

  /**
   * Puts new text in the place of a file.
   *
   * Promises: the file holds the old text or the new one, whole, whatever happens.
   *
   * @throws `files/not-writable` or `files/disk-full`.
   */
  replaceText(path: string, text: string): Promise<void>;
}
