/** How a command ended: what scripts and `make` files ask about. */
export const EXIT = {
  /** The design is good, the work is done. */
  good: 0,
  /** The design or the data falls short; the output says how. */
  short: 1,
  /** The input cannot be used; nothing was written. */
  badInput: 2,
  /** The answer could not be printed, the disk behind it being full: EX_IOERR of the BSD sysexits list. */
  notPrinted: 74,
  /** Stopped by Ctrl-C while writing, as shells count it: 128 + signal 2. */
  stopped: 130,
} as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];
