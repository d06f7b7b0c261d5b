import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { BOARD, handHead, QUIET_CIRCUIT } from '../../../../test/support/handHead.ts';
import { boardNamed } from '../../boards/index.ts';
import type { CircuitSpec, LadderSpec } from '../headSpec.ts';
import { LADDER_DEFAULT, ladderPlan, ladderReadsAs, ladderResistors, ladderWeights } from './ladder.ts';

/** Output of a ladder as the solution of Kirchhoff's laws at every node, by elimination. [share of supply] */
function solvedOutput(
  kind: LadderSpec['kind'],
  ohms: readonly number[],
  word: number,
  channels: number,
): number {
  const nodes = kind === 'weighted' ? 1 : channels;
  const matrix = Array.from({ length: nodes }, () => new Array<number>(nodes + 1).fill(0));
  const join = (a: number, b: number | null, ohm: number, volts = 0): void => {
    matrix[a]![a]! += 1 / ohm;
    if (b === null) matrix[a]![nodes]! += volts / ohm;
    else {
      matrix[b]![b]! += 1 / ohm;
      matrix[a]![b]! -= 1 / ohm;
      matrix[b]![a]! -= 1 / ohm;
    }
  };
  // Every leg stands behind the 50 ohm of its gate.
  for (let c = 0; c < channels; c++) join(Math.min(c, nodes - 1), null, ohms[c]! + 50, (word >> c) & 1);
  if (kind === 'r-2r') {
    for (let c = 0; c + 1 < channels; c++) join(c, c + 1, ohms[channels + c]!);
    join(0, null, ohms.at(-1)!);
  }
  for (let pivot = 0; pivot < nodes; pivot++) {
    for (let row = pivot + 1; row < nodes; row++) {
      const factor = matrix[row]![pivot]! / matrix[pivot]![pivot]!;
      for (let column = pivot; column <= nodes; column++)
        matrix[row]![column]! -= factor * matrix[pivot]![column]!;
    }
  }
  // Upper triangle: the last node is the output.
  return matrix[nodes - 1]![nodes]! / matrix[nodes - 1]![nodes - 1]!;
}

const circuitWith = (ladder: Partial<LadderSpec>): CircuitSpec => ({
  ...QUIET_CIRCUIT,
  input: 'ladder',
  noiseCounts: 1,
  ladder: { ...LADDER_DEFAULT, ...ladder },
});
const kinds = ['r-2r', 'weighted'] as const;

describe('a ladder on one wire', () => {
  it('gives each word what the laws of its nodes say, whatever its resistors', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.integer({ min: 1, max: 8 }),
        fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), { minLength: 16, maxLength: 16 }),
        fc.nat(),
        (kind, channels, factors, any) => {
          const ohms = ladderResistors({ ...LADDER_DEFAULT, kind }, channels).map(
            ({ ohm }, r) => ohm * factors[r]!,
          );
          const word = any % 2 ** channels;
          const { weights } = ladderWeights(kind, ohms, channels);
          const sum = weights.reduce((total, weight, c) => total + ((word >> c) & 1) * weight, 0);
          expect(sum).toBeCloseTo(solvedOutput(kind, ohms, word, channels), 12);
        },
      ),
      { seed: 5101, numRuns: 200 },
    );
  });

  it('has steps of a 32nd of the scale with five channels of R and 2R, and R at its output', () => {
    const ladder = ladderPlan(circuitWith({ smallestOhm: 1e5 }), BOARD, 5, 0);
    for (const [word, counts] of ladder.levels.entries())
      expect(Math.abs(counts - 32 * word)).toBeLessThan(0.2);
    expect(Math.abs(ladder.sourceOhm / 1e5 - 1)).toBeLessThan(0.001);
    expect(ladder.order).toEqual(Array.from({ length: 32 }, (_, word) => word));
  });

  it('has its worst gap where every resistor stands at the end of its tolerance that makes it worst', () => {
    for (const kind of kinds) {
      const circuit = circuitWith({ kind, tolerancePercent: 1, ppmPerK: 0 });
      const plan = ladderPlan(circuit, BOARD, 3, 0);
      const ohms = plan.resistors.map(({ ohm }) => ohm);
      let worst = Infinity;
      for (let corner = 0; corner < 2 ** ohms.length; corner++) {
        const built = ohms.map((ohm, r) => ohm * ((corner >> r) & 1 ? 1.01 : 0.99));
        const at = plan.order.map((word) => 1024 * solvedOutput(kind, built, word, 3));
        for (let i = 1; i < at.length; i++) worst = Math.min(worst, at[i]! - at[i - 1]!);
      }
      // Told to first order; what is left goes with the square of the tolerance.
      expect(Math.abs(plan.worstGapCounts - worst)).toBeLessThan(0.02 * (plan.gapCounts - worst) + 0.05);
    }
  });

  it('loses with temperature what its coefficient says it drifts', () => {
    const [cold, warm] = [0, 50].map((kelvin) => ladderPlan(circuitWith({ ppmPerK: 200 }), BOARD, 4, kelvin));
    const wider = ladderPlan(circuitWith({ ppmPerK: 0, tolerancePercent: 2 }), BOARD, 4, 0);
    expect(cold!.worstGapCounts).toBeGreaterThan(warm!.worstGapCounts);
    expect(warm!.worstGapCounts).toBeCloseTo(wider.worstGapCounts, 9); // 200 ppm/K over 50 K is another 1 %
  });

  it('is read right by five channels of 1 %, and refused with its gap at 5 %, saying what would do', () => {
    const disc = handDisc({ positions: 32 });
    const good = handHead(disc, { circuit: circuitWith({}) });
    expect(good.faults).toEqual([]);
    expect(good.ladder!.worstGapCounts).toBeGreaterThan(good.ladder!.neededCounts);
    const bad = handHead(disc, { circuit: circuitWith({ tolerancePercent: 5 }) });
    expect(bad.faults).toMatchObject([
      { code: 'head/ladder-words-alike', where: 'circuit.ladder.tolerancePercent' },
    ]);
    expect(bad.faults[0]!.got).toContain(`${bad.ladder!.worstGapCounts.toFixed(1)} counts at 5 %`);
    const percent = Number(/tolerancePercent to ([\d.]+)/.exec(bad.faults[0]!.fix)![1]);
    expect(handHead(disc, { circuit: circuitWith({ tolerancePercent: percent }) }).faults).toEqual([]);
  });

  it('is refused where more channels are asked for than one wire holds', () => {
    const many = handHead(handDisc({ positions: 1024, firstRadiusMm: 60 }), { circuit: circuitWith({}) });
    expect(many.ladder).toBeNull();
    expect(many.faults.map(({ code }) => code)).toContain('head/ladder-words-alike');
  });

  it('cannot tell words apart above where a converter follows', () => {
    const esp32 = boardNamed('esp32')!;
    expect(ladderPlan(circuitWith({}), esp32, 3, 30).worstGapCounts).toBeLessThanOrEqual(0);
  });

  it('reads every word as itself with resistors anywhere within their tolerance, where it is not refused', () => {
    const plan = ladderPlan(circuitWith({}), BOARD, 5, 0);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.99, max: 1.01, noNaN: true }), { minLength: 10, maxLength: 10 }),
        (factors) => {
          expect([...ladderReadsAs(plan, BOARD, factors)]).toEqual(plan.levels.map((_, word) => word));
        },
      ),
      { seed: 5102, numRuns: 100 },
    );
  });

  it('takes words for others where the highest leg is 10 % off', () => {
    const plan = ladderPlan(circuitWith({}), BOARD, 5, 0);
    const read = ladderReadsAs(plan, BOARD, [1, 1, 1, 1, 1.1, 1, 1, 1, 1, 1]);
    expect([...read].filter((seen, word) => seen !== word).length).toBeGreaterThan(5);
  });
});
