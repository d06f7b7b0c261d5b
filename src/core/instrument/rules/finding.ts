import type { Problem } from '../../error/index.ts';
import type { InstrumentDraft } from '../schema/instrumentSchema.ts';

/** What is wrong between fields that are each in range. */
export interface Finding extends Omit<Problem, 'where'> {
  /** Fields the rule looked at; the first is where the problem is shown. n ≥ 1 */
  readonly fields: readonly [string, ...string[]];
}

/** A draft of which some sections could not be read; rules look only at what is there. */
export type PartialDraft = {
  readonly [Section in keyof InstrumentDraft]?: InstrumentDraft[Section] | undefined;
};
