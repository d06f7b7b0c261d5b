import type { CodeNeed, RankedCode } from '../../../codes/index.ts';
import type { Detector } from '../../../head/index.ts';
import { FLAWLESS, withErrors, type Figures, type Finding } from '../../principle.ts';
import type { Situation } from '../../situation.ts';
import { stepErrors, stepLimitDegPerS } from './madeSteps.ts';

/** The file's own code where it can be made of these marks, else the best for the need. */
function codeOf({ instrument, codesFor }: Situation, marks: CodeNeed['marks']): RankedCode {
  const levels = marks === 'light-dark' ? 2 : 3;
  const codes = codesFor(marks).filter(
    ({ table, name }) =>
      (table ? Math.max(...table.tracks.map(({ levelCount }) => levelCount)) : 2) === levels ||
      (levels === 2 && !name.startsWith('ternary')),
  );
  const own = codes.find(({ name, measures }) => name === instrument.disc.code && measures !== null);
  return own ?? codes[0] ?? codesFor(marks)[0]!;
}

const costsOf = { fits: 'nothing', risky: 'care', 'does-not-fit': 'use', cannot: 'use' } as const;

/** What the code and the process say about making this disc. */
function makingFinding({ title, verdict, reasons }: RankedCode, positions: number): Finding {
  const telling = reasons.find(({ isGood }) => isGood === (verdict === 'fits')) ?? reasons[0];
  return {
    isGood: verdict === 'fits',
    costs: costsOf[verdict],
    text: `As a disc of ${positions} positions, ${title}: ${telling?.text ?? 'nothing speaks against it.'}`,
    change: 'a larger disc, other positions or a finer process, as `vanewright prove` tells',
  };
}

/** Figures of a coded disc whose sensors tell such marks apart. */
export function discFigures(situation: Situation, marks: CodeNeed['marks'], detector: Detector): Figures {
  const { positions } = situation.instrument.need;
  const code = codeOf(situation, marks);
  const { measures } = code;
  const channels = measures?.channels ?? Math.ceil(Math.log2(positions));
  return {
    ...FLAWLESS,
    stepDeg: 360 / positions,
    ...withErrors(stepErrors(situation, positions)),
    limitDegPerS: stepLimitDegPerS(situation, { positions, channels, detector }),
    showsFaults: measures !== null && measures.lampOffSeen && measures.floodedSeen,
    more: [makingFinding(code, positions)],
  };
}
