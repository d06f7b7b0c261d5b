/** The clock of this machine. */
export interface Clock {
  /** [ms UTC] */
  nowMs(): number;
}
