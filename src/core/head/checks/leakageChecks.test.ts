import { describe, expect, it } from 'vitest';
import { BOARD, LINEAR_HEAD, LOG_HEAD, QUIET_CIRCUIT } from '../../../../test/support/handHead.ts';
import { channelLevels } from '../circuit/levels.ts';
import type { CircuitSpec, Detector, HeadSpec } from '../headSpec.ts';
import { leakageFindings } from './leakageChecks.ts';

function found(spec: HeadSpec, circuit: Partial<CircuitSpec> = {}): string[] {
  const whole = { ...QUIET_CIRCUIT, ...circuit };
  const { problems, warnings } = leakageFindings(
    spec.detector,
    whole,
    BOARD,
    channelLevels(spec, whole, BOARD),
  );
  return [...problems, ...warnings].map(({ code, fix }) => `${code} ${fix}`);
}

const withLit = (litMa: number): HeadSpec => ({
  ...LINEAR_HEAD,
  detector: { ...LINEAR_HEAD.detector, litMa } as Detector,
});

describe('the leakage of an input', () => {
  it('drowns a phototransistor that gives a tenth of it', () => {
    // 0.1 uA through 43 Mohm makes 4.3 V, and 1 uA of leakage would make 43 V.
    expect(found(withLit(0.0001))[0]).toContain('head/leakage-hides-light');
  });

  // A current sensor's swing and the leakage pass the same resistor, so their ratio is that of the currents.
  it.each([
    [0.0035, 'head/leakage-hides-light'],
    [0.0045, 'head/leakage '],
    [0.0195, 'head/leakage '],
  ])('of 1 uA is held against %f mA of light', (litMa, code) => {
    expect(found(withLit(litMa))[0]).toContain(code);
  });

  it('does not matter to what it names, nor to the usual sensors', () => {
    const named = Number(/litMa is ([\d.]+) /.exec(found(withLit(0.001))[0]!)![1]);
    expect(found(withLit(named))).toEqual([]);
    expect(found(withLit(0.0205))).toEqual([]);
    expect(found(LOG_HEAD)).toEqual([]);
  });

  it('moves the divider of photoresistors of megohms', () => {
    const detector = { ...LOG_HEAD.detector, litOhm: 2e6, darkOhm: 2e8 } as Detector;
    expect(found({ ...LOG_HEAD, detector })[0]).toContain('head/leakage-hides-light');
  });

  it('is no matter to a comparator that only says on or off', () => {
    expect(found(withLit(0.0001), { input: 'digital' })).toEqual([]);
  });
});
