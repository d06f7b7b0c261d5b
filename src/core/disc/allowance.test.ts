import { describe, expect, it } from 'vitest';
import { withAllowance } from './allowance.ts';
import { UNMEASURED } from './measured/couponReadings.ts';
import { processDefaults } from './processDefaults.ts';

const laser = processDefaults.laser; // grows windows by 0.2 mm
// Slot and tongue drawn 2 mm came out 2.3 and 1.7: 0.15 mm lost at each edge.
const measured = { ...laser, measured: { ...UNMEASURED, slotMm: 2.3, landMm: 1.7 } };

describe('the allowance for what a tool takes', () => {
  it('is left to the machine at first, and the proof reckons with the growth', () => {
    expect(withAllowance(laser, 5)).toEqual({ process: laser, drawn: null });
    expect(withAllowance(laser, 5, 'none')).toEqual({ process: laser, drawn: null });
  });

  it('moves every edge by half the usual growth when it is asked for', () => {
    const { process, drawn } = withAllowance(laser, 5, 'drawn');
    expect(process.windowGrowthMm).toBe(0);
    expect(drawn).toEqual({ scale: 1, edgeLossMm: 0.1, boreAllowanceMm: -0.2, footGrowthMm: 0 });
  });

  it('moves every edge as measured once a coupon was', () => {
    for (const allowance of [undefined, 'drawn'] as const) {
      const { process, drawn } = withAllowance(measured, 5, allowance);
      expect(process.windowGrowthMm).toBe(0);
      expect(drawn!.edgeLossMm).toBeCloseTo(0.15, 12);
    }
  });

  it('keeps what was measured as growth where the machine is to allow for it', () => {
    const { process, drawn } = withAllowance(measured, 5, 'none');
    expect(process.windowGrowthMm).toBeCloseTo(0.3, 12);
    expect(drawn!.edgeLossMm).toBe(0);
  });
});
