import type { Problem } from '../../error/index.ts';

/** A problem whose fix is not worked out yet: one change of the file often mends several at once. */
export type Fault = Omit<Problem, 'fix'>;
