/** Where instrument files are read from. */
export interface InstrumentFiles {
  /**
   * Whole text of a file.
   *
   * Promises: reads at most `mostBytes`; decodes UTF-8 strictly; never changes the file.
   *
   * @throws `files/not-found`, `files/not-readable`, `files/too-large` or `files/not-text`.
   */
  readText(path: string, mostBytes: number): Promise<string>;
}
