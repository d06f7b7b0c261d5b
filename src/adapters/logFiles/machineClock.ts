import type { Clock } from '../../ports/index.ts';

/** The clock of this machine. */
export const machineClock: Clock = {
  nowMs: () => Date.now(),
  after(delayMs, work) {
    const timer = setTimeout(work, delayMs);
    return () => clearTimeout(timer);
  },
};
