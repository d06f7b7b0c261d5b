import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber, showSignificant } from '../../units/index.ts';
import {
  LADDER_CHANNELS_MOST,
  LADDER_DEFAULT,
  ladderPlan,
  tellsWordsApart,
  type LadderPlan,
} from '../circuit/ladder.ts';
import type { CircuitSpec } from '../headSpec.ts';

/** Tolerances that resistors are sold in, coarsest first. @source IEC 60063 series and IEC 60062 letters J, G, F, D, B [percent] */
const SOLD_PERCENT = [5, 2, 1, 0.5, 0.1];

/** One wire must tell every word from every other, whatever resistors the maker gets and however cold it is. */
export function ladderProblems(
  ladder: LadderPlan | null,
  circuit: CircuitSpec,
  board: Board,
  at: { readonly channels: number; readonly kelvin: number },
): Problem[] {
  if (circuit.input !== 'ladder') return [];
  const { channels, kelvin } = at;
  const what = 'On one wire the converter cannot tell every word from every other.';
  if (ladder === null) {
    return [
      {
        code: 'head/ladder-words-alike',
        what,
        where: 'circuit.input',
        got: `${channels} channels, whose words would lie ${showSignificant(2 ** (board.converterBits - channels), 2)} counts apart with perfect resistors`,
        allowed: `${LADDER_CHANNELS_MOST} channels at most`,
        fix: 'Set circuit.input to shift-register, which keeps the channels apart.',
      },
    ];
  }
  if (tellsWordsApart(ladder)) return [];
  const spec = circuit.ladder ?? LADDER_DEFAULT;
  const works = (changed: Partial<typeof spec>): boolean =>
    tellsWordsApart(ladderPlan({ ...circuit, ladder: { ...spec, ...changed } }, board, channels, kelvin));
  const finer = SOLD_PERCENT.find(
    (percent) => percent < spec.tolerancePercent && works({ tolerancePercent: percent }),
  );
  const other = 'Or set circuit.input to shift-register, which keeps the channels apart.';
  const fix =
    finer !== undefined
      ? `Set circuit.ladder.tolerancePercent to ${finer} and buy such resistors. ${other}`
      : spec.kind === 'weighted' && works({ kind: 'r-2r' })
        ? `Set circuit.ladder.kind to r-2r. ${other}`
        : 'Set circuit.input to shift-register, which keeps the channels apart; no resistor that is sold helps here.';
  const { gapCounts, worstGapCounts, neededCounts } = ladder;
  return [
    {
      code: 'head/ladder-words-alike',
      what,
      where: 'circuit.ladder.tolerancePercent',
      got:
        `a smallest gap of ${showNumber(worstGapCounts, 1)} counts at ${showNumber(spec.tolerancePercent, 2)} % and ` +
        `${showNumber(kelvin, 0)} K (${showNumber(gapCounts, 1)} as printed)`,
      allowed: `${showNumber(neededCounts, 1)} counts or more, for the noise and the curve of this converter`,
      fix,
    },
  ];
}
