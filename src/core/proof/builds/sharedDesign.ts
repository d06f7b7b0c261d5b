import { boardNamed } from '../../boards/index.ts';
import { codeJson, readCodeJson } from '../../codes/index.ts';
import { planDisc, type DiscSpec } from '../../disc/index.ts';
import { BrokenPromise } from '../../error/index.ts';
import { planHead, type CircuitSpec, type HeadPlan, type HeadSpec, type Rate } from '../../head/index.ts';

/** A design as plain data, to be sent to another thread or machine. */
export interface SharedDesign {
  /** The code as `codeJson` writes it. */
  readonly code: string;
  readonly disc: DiscSpec;
  readonly head: HeadSpec;
  readonly circuit: CircuitSpec;
  readonly board: string;
  readonly rate: Rate;
}

/** A design as plain data. Leak and daylight are in its detector already and not told again. */
export function sharedDesign({ disc, spec, circuit, board, rate }: HeadPlan): SharedDesign {
  return {
    code: codeJson(disc.code),
    disc: disc.spec,
    head: { ...spec, leak: null, daylightShare: 0 },
    circuit,
    board: board.name,
    rate,
  };
}

/**
 * The same design again: its builds are equal to the last bit.
 *
 * @check src/core/proof/builds/sharedDesign.test.ts
 */
export function headOfShared({ code, disc, head, circuit, board, rate }: SharedDesign): HeadPlan {
  const named = boardNamed(board);
  if (!named) throw new BrokenPromise('A shared design names a board that does not exist.');
  return planHead(planDisc(readCodeJson(code, 'shared design'), disc), head, circuit, named, rate);
}
