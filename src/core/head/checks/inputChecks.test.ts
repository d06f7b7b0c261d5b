import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import type { Problem } from '../../error/index.ts';
import { feedbackOhm, GATE_OHM } from '../circuit/gates.ts';
import type { HeadPlan } from '../headPlan.ts';
import type { CircuitSpec, Detector, HeadSpec } from '../headSpec.ts';

const disc = handDisc({ positions: 32 });
const head = (circuit: Partial<CircuitSpec>, spec: Partial<HeadSpec> = {}): HeadPlan =>
  handHead(disc, { circuit, spec });
const codesOf = (problems: readonly Problem[]): string[] => problems.map(({ code }) => code);
const cell = LOG_HEAD.detector as Extract<Detector, { kind: 'photoresistor' }>;

describe('gates behind the sensors', () => {
  it('switch about half the supply, apart by what the feedback gives', () => {
    const { levels } = head({ input: 'digital', hysteresisCounts: null }, { detector: cell });
    expect((levels.lowCounts + levels.highCounts) / 2).toBeCloseTo(512, 9);
    expect(levels.highCounts - levels.lowCounts).toBeCloseTo((1024 * 10) / 480, 9);
    // 470 kohm is the value that belongs to it.
    expect(feedbackOhm(head({ hysteresisCounts: null }).circuit, 1024)).toBeCloseTo(470_000, 6);
    expect(GATE_OHM).toBe(10_000);
  });

  it('never switch where lit and dark lie on one side, and the fix puts them on both', () => {
    const bad = head(
      { input: 'shift-register', resistorOhm: 1_000_000 },
      { detector: { ...cell, darkOhm: 300_000 } },
    );
    const [problem] = bad.faults.filter(({ code }) => code === 'head/gate-never-switches');
    expect(problem).toMatchObject({ where: 'circuit.resistorOhm' });
    const ohm = Number(/resistorOhm to (\d+)/.exec(problem!.fix)![1]);
    const good = head(
      { input: 'shift-register', resistorOhm: ohm },
      { detector: { ...cell, darkOhm: 300_000 } },
    );
    expect(codesOf([...good.faults, ...good.warnings])).not.toContain('head/gate-never-switches');
  });

  it('of Schmitt inverters may not switch where a comparator does', () => {
    const weak = { detector: { ...cell, darkOhm: 12_000 } };
    expect(codesOf(head({ input: 'digital' }, weak).warnings)).not.toContain('head/gate-may-not-switch');
    const schmitt = head({ input: 'digital', gate: 'schmitt' }, weak);
    expect(codesOf(schmitt.warnings)).toContain('head/gate-may-not-switch');
  });
});

describe('a converter that has no time to settle', () => {
  const faint = (litMa: number): Partial<HeadSpec> => ({
    detector: { ...LINEAR_HEAD.detector, litMa } as HeadSpec['detector'],
  });

  it('is told of, and fails where the channel before is all there is', () => {
    const late = head({ input: 'multiplexer' }, faint(0.02));
    expect(late.levels.sourceOhm).toBe(late.levels.resistorOhm + 180);
    expect(codesOf(late.warnings)).toContain('head/settles-late');
    expect(codesOf(head({ input: 'multiplexer' }, faint(0.0005)).faults)).toContain('head/never-settles');
  });

  it('says nothing of the usual divider', () => {
    const codes = codesOf(head({}, { detector: cell }).warnings);
    expect(codes).not.toContain('head/settles-late');
  });
});

describe('the fixed resistor of a channel', () => {
  it('gets warm below 200 ohm at 5 V, burns below 25, and is quiet from the value that the fix names', () => {
    // 25 V² over half of a quarter of a watt is 200 ohm.
    const bright = { detector: { ...cell, litOhm: 20, darkOhm: 2_000 } };
    expect(codesOf(head({ resistorOhm: 150 }, bright).warnings)).toContain('head/resistor-warm');
    expect(codesOf(head({ resistorOhm: 20 }, bright).faults)).toContain('head/resistor-burns');
    expect(codesOf(head({ resistorOhm: 200 }, bright).warnings)).not.toContain('head/resistor-warm');
    expect(
      head({ resistorOhm: 20 }, bright).faults.find(({ code }) => code === 'head/resistor-burns')!.fix,
    ).toContain('Set circuit.resistorOhm to 200');
  });
});
