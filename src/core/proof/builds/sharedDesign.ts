import { boardNamed } from '../../boards/index.ts';
import { codeJson, readCodeJson } from '../../codes/index.ts';
import { planDisc, type DiscSpec } from '../../disc/index.ts';
import { BrokenPromise } from '../../error/index.ts';
import {
  planHead,
  ribMargin,
  type CircuitSpec,
  type HeadPlan,
  type HeadSpec,
  type Rate,
} from '../../head/index.ts';

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

/** A design as plain data. */
export function sharedDesign({ disc, asked, circuit, board, rate }: HeadPlan): SharedDesign {
  return {
    code: codeJson(disc.code),
    disc: disc.spec,
    head: asked,
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
  const ribCost = ribMargin({ spec: head, circuit, board: named });
  const plan = planDisc(readCodeJson(code, 'shared design'), disc, ribCost);
  return planHead(plan, head, circuit, named, rate);
}
