import type { CircuitInput } from '../headSpec.ts';
import { LADDER_CHANNELS_MOST } from './ladder.ts';

/** Ways of one multiplexer, or of two shift registers; most channels of a word. [-] */
export const INPUTS_MOST = 16;

/** Letter before the number of an input, as it stands in the wiring, and how many there are. */
const gathered = {
  multiplexer: { letter: 'Y', inputs: INPUTS_MOST },
  'shift-register': { letter: 'R', inputs: INPUTS_MOST },
  ladder: { letter: 'L', inputs: LADDER_CHANNELS_MOST },
} as const;

/**
 * Names of the inputs of what gathers channels, in the order they are given out: `Y0` to `Y15`, `R0` to `R15`, `L0` on.
 *
 * @returns `null` where every channel has a pin of the board; n is 16, or the legs of a ladder. [-]
 */
export function gatheredInputs(input: CircuitInput): readonly string[] | null {
  if (input === 'direct' || input === 'digital') return null;
  const { letter, inputs } = gathered[input];
  return Array.from({ length: inputs }, (_, i) => `${letter}${i}`);
}
