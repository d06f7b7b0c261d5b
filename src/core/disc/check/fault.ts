import type { Problem } from '../../error/index.ts';
import type { Degrees } from '../../units/index.ts';

/** A place on the drawing of a disc. */
export interface FaultPlace {
  readonly radiusMm: number;
  readonly angleDeg: Degrees;
}

/** A problem whose fix is not worked out yet: one change of the file often mends several at once. */
export interface Fault extends Omit<Problem, 'fix'> {
  /** Where on the drawing it shows; nowhere in particular where left out. */
  readonly at?: readonly FaultPlace[];
}
