/** How a command ended: what scripts and `make` files ask about. */
export const EXIT = {
  /** The design is good, the work is done. */
  good: 0,
  /** The design or the data falls short; the output says how. */
  short: 1,
  /** The input cannot be used; nothing was written. */
  badInput: 2,
  /** Stopped by Ctrl-C, as shells count it: 128 + signal 2. */
  stopped: 130,
} as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];
