/** The clock of this machine. */
export interface Clock {
  /** [ms UTC] */
  nowMs(): number;
  /**
   * Does something later, once.
   *
   * @param delayMs - [ms], >= 0
   * @returns Calls it off.
   */
  after(delayMs: number, work: () => void): () => void;
}
