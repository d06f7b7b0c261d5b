import type { Board } from '../../boards/index.ts';
import { showNumber, showSignificant } from '../../units/index.ts';
import type { Levels } from '../headPlan.ts';
import type { Findings } from './findings.ts';

/** Rating of the usual small resistor. Common practice, no source. [W] */
const USUAL_W = 0.25;
/** Share of it that is used in a closed box. Common practice, no source. [-] */
const USED_SHARE = 0.5;
/** Most that the supply of a board feeds into one divider before it sags. Common practice, no source. [W] */
const MOST_W = 1;

/**
 * All of the supply lies over a channel's resistor when its sensor conducts as well as it can.
 *
 * @source P = U²/R
 */
export function powerFindings(board: Board, { resistorOhm }: Levels): Findings {
  const watt = board.supplyV ** 2 / resistorOhm;
  if (watt <= USED_SHARE * USUAL_W) return { problems: [], warnings: [] };
  const least = board.supplyV ** 2 / (USED_SHARE * USUAL_W);
  const problem = {
    code: watt > MOST_W ? 'head/resistor-burns' : 'head/resistor-warm',
    what:
      watt > MOST_W
        ? 'The fixed resistor of a channel would burn, and pull the supply down with it.'
        : 'The fixed resistor of a channel gets warm, and needs a larger one than usual.',
    where: 'circuit.resistorOhm',
    got: `${showNumber(watt, 2)} W in ${showSignificant(resistorOhm, 3)} ohm at ${board.supplyV} V`,
    allowed: `${showNumber(USED_SHARE * USUAL_W, 3)} W, half the rating of a usual ${USUAL_W} W resistor`,
    fix: `Set circuit.resistorOhm to ${Math.ceil(least / 10) * 10} (ohm) or more.`,
  };
  return watt > MOST_W ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}
