import { describe, expect, it } from 'vitest';
import { boardNamed } from '../../boards/index.ts';
import { unsettledShare } from './settling.ts';

const board = boardNamed('atmega328p')!;
const steady = { input: 'direct', emitters: 'steady' } as const;

/** Charging in small steps of time: no exponential. */
function leftAfter(us: number, ohm: number, picofarad: number): number {
  const steps = 100_000;
  let volts = 1;
  for (let i = 0; i < steps; i++) volts -= (volts * (us / steps)) / (ohm * picofarad * 1e-6);
  return volts;
}

describe('the input of a converter', () => {
  it('has settled to half a count of ten bits behind the resistance that its sheet advises', () => {
    const counts = 1024 * unsettledShare({ circuit: steady, sourceOhm: board.maxSourceOhm, board });
    expect(counts).toBeLessThan(0.5);
    expect(counts).toBeGreaterThan(0.25);
  });

  it('charges through the source as small steps of time say, twice as long where it is read twice', () => {
    for (const [sourceOhm, times] of [
      [8_000, 1],
      [90_000, 2],
    ] as const) {
      const { capacitorPf, ohm, us } = board.sampling;
      const stepped = leftAfter(times * us, sourceOhm + ohm, capacitorPf);
      expect(unsettledShare({ circuit: steady, sourceOhm, board })).toBeCloseTo(stepped, 4);
    }
  });

  it('takes longer behind a multiplexer, and never leaves more than there was', () => {
    const behind = { input: 'multiplexer', emitters: 'steady' } as const;
    for (const sourceOhm of [1e3, 1e4, 1e5, 1e6, 1e9]) {
      const [alone, shared] = [steady, behind].map((circuit) =>
        unsettledShare({ circuit, sourceOhm, board }),
      );
      if (sourceOhm > 1e4) expect(shared!).toBeGreaterThanOrEqual(Math.min(1, alone!));
      expect(shared).toBeLessThanOrEqual(1);
    }
  });
});
