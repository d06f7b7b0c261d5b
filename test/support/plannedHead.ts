import { readFileSync } from 'node:fs';
import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode } from '../../src/core/codes/index.ts';
import { planDisc, type DiscSpec } from '../../src/core/disc/index.ts';
import { planHead, ribMargin, type HeadPlan } from '../../src/core/head/index.ts';
import { readInstrument, type Instrument } from '../../src/core/instrument/index.ts';
import { lineCharsAtMost } from '../../src/core/record/index.ts';

/** The instrument of an example, with another disc where one is given. */
export function exampleInstrument(example: string, disc: Partial<DiscSpec> = {}): Instrument {
  const file = new URL(`../../examples/${example}/instrument.yaml`, import.meta.url);
  const { instrument } = readInstrument(readFileSync(file, 'utf8'), `${example}/instrument.yaml`);
  return { ...instrument, disc: { ...instrument.disc, ...disc } };
}

/** An instrument carried through code, disc and head, as the command does it. */
export function plannedHead(instrument: Instrument): HeadPlan {
  const { need, disc, controller } = instrument;
  const board = boardNamed(controller.board)!;
  const code = buildCode(disc.code, need.positions, disc.codeOptions);
  const ribCost = ribMargin({ spec: instrument.head, circuit: instrument.circuit, board });
  return planHead(planDisc(code, disc, ribCost), instrument.head, instrument.circuit, board, {
    baud: controller.baud,
    lineChars: lineCharsAtMost(
      code.channels.length,
      2 ** board.converterBits - 1,
      instrument.head.detector.kind === 'colour-sensor' ? 3 : 1,
    ),
    turnRateDegPerS: need.turnRateDegPerS,
  });
}
