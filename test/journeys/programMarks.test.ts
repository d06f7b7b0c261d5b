import { describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import type { HeadPlan, MarkPlan } from '../../src/core/head/index.ts';
import { programFor, programProblems } from '../../src/core/program/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  freshLine,
  jettyHead,
  jettyInstrument,
  setCounts,
  statusOf,
  type VaneWishes,
} from '../support/avrVane.ts';

const code = buildCode('ternary-modular', 27);

/** Three greys: counts of level 0, 1 and 2, and thresholds half way with 40 counts between them. */
const greys = (counts: readonly [number, number, number]): MarkPlan => {
  const pair = (a: number, b: number) => ({ lowCounts: (a + b) / 2 - 20, highCounts: (a + b) / 2 + 20 });
  return { kind: 'greys', counts, thresholds: [pair(counts[0], counts[1]), pair(counts[1], counts[2])] };
};

const wishes: VaneWishes = { positions: 27, code, cups: null };

function headWith(marks: MarkPlan | null, change: VaneWishes = {}): HeadPlan {
  const instrument = jettyInstrument({ ...wishes, ...change });
  return { ...jettyHead(instrument, wishes), marks };
}

describe('three greys on the emulated chip', () => {
  it.each([
    ['rising', [100, 500, 900]],
    ['falling', [900, 500, 100]],
  ] as const)(
    'are read at every position, both ways round, and keep their level between thresholds: %s',
    async (_, levels) => {
      const instrument = jettyInstrument(wishes);
      const { hex } = await buildAvr(programFor(instrument, headWith(greys([...levels]))).source);
      const chip = new AvrChip(hex);
      const there = Array.from({ length: 27 }, (_, k) => k);
      for (const k of [...there, 0, ...there.toReversed()]) {
        const word = code.words[k]!;
        for (const [channel, level] of [...word].entries()) setCounts(chip, channel, levels[Number(level)]!);
        const line = freshLine(chip);
        expect(line.word).toBe(word);
        const heading = (360 - ((k + 0.5) * 360) / 27) % 360;
        expect(Math.abs(line.headingDeg! - heading)).toBeLessThanOrEqual(0.005 + 1e-9);
      }
      // From the middle grey, 10 counts either side of half way to the next one change nothing; 25 beyond it do.
      const at = (counts: number): string => {
        setCounts(chip, 0, counts);
        return freshLine(chip).word[0]!;
      };
      const way = Math.sign(levels[2] - levels[0]);
      expect(at(500)).toBe('1');
      expect([at(500 + way * 190), at(500 + way * 210)]).toEqual(['1', '1']);
      expect([at(500 + way * 225), at(500 + way * 190), at(500 + way * 175)]).toEqual(['2', '2', '1']);
      expect([at(500 - way * 225), at(500 - way * 190), at(500 - way * 175)]).toEqual(['0', '0', '1']);
      expect(statusOf(chip.statuses[0]!).thresholds).toHaveLength(6);
    },
  );
});

describe('marks that no program can tell apart', () => {
  const colours: MarkPlan = {
    kind: 'colours',
    marksRgbCounts: [
      [540, 198, 162],
      [225, 450, 225],
      [162, 270, 468],
    ],
    centroids: [
      [0.6, 0.22],
      [0.25, 0.5],
      [0.18, 0.3],
    ],
    rejectRatio: 0.5,
    leastSumCounts: 100,
    marginSigma: 20,
  };

  it.each<[string, MarkPlan | null, VaneWishes, string]>([
    ['a detector of light and dark', null, {}, 'Set disc.code to reflected-gray.'],
    ['colours under steady lights', colours, {}, 'Set circuit.emitters to pulsed.'],
    ['greys behind comparators', greys([1, 2, 3]), { input: 'digital' }, 'Set circuit.input to direct.'],
    [
      'a board with MicroPython',
      greys([100, 500, 900]),
      { board: 'rp2040', input: 'multiplexer' },
      'Set controller.board to atmega328p.',
    ],
  ])('are refused with the cure: %s', (_, marks, change, fix) => {
    const instrument = jettyInstrument({ ...wishes, ...change });
    const found = programProblems(instrument, headWith(marks, change));
    expect(
      found.filter(({ code: name }) => name === 'program/three-levels').map((problem) => problem.fix),
    ).toEqual([fix]);
  });
});
