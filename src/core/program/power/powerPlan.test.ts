import { describe, expect, it } from 'vitest';
import {
  FAST_SENSOR,
  jettyHead,
  jettyInstrument,
  type VaneWishes,
} from '../../../../test/support/avrVane.ts';
import type { PowerSpec } from '../../instrument/index.ts';
import { powerPlan, powerShortfalls } from './powerPlan.ts';

function planOf(power: Partial<PowerSpec>, wishes: VaneWishes = {}) {
  const instrument = jettyInstrument(wishes);
  const changed = { ...instrument, power: { ...instrument.power, ...power } };
  const head = jettyHead(changed, wishes);
  return { plan: powerPlan(changed, head), short: powerShortfalls(changed, head) };
}

describe('the power plan', () => {
  // By hand: board 15 mA, five lights of 10 mA, five dividers of 5 V over 2 kohm + 20 kohm = 0.227 mA.
  const awake = 15 + 50 + (5 * 5000) / 22_000;

  it('adds up board, lights and sensors', () => {
    const { plan } = planOf({});
    expect(plan.averageMa).toBeCloseTo(awake, 9);
    expect([plan.batteryMa, plan.batteryDays, plan.panelW]).toEqual([null, null, null]);
    expect(plan.unknowable).toEqual([]);
  });

  it('counts half of a battery, and a panel that refills a day in the hours of sun', () => {
    const battery = { capacityMah: 7000, voltageV: 12 };
    const { plan } = planOf({ battery, sunHoursPerDay: 1.5 });
    expect(plan.batteryMa).toBeCloseTo(awake, 9); // a linear regulator passes the current on
    expect(plan.batteryDays).toBeCloseTo(3500 / awake / 24, 9);
    expect(plan.panelW).toBeCloseTo((awake * 12 * 24) / 1000 / (1.5 * 0.6), 9);
    const switching = planOf({ battery, regulator: 'switching' }).plan;
    expect(switching.batteryMa).toBeCloseTo((awake * 5) / 12 / 0.85, 9);
  });

  it('takes the current that the maker has measured', () => {
    const { plan } = planOf({ boardMa: 3 });
    expect(plan.averageMa).toBeCloseTo(awake - 12, 9);
    expect(plan.notes.join()).not.toContain('from memory');
  });

  it('says what deep sleep makes unknowable, gusts first, and saves by it', () => {
    const wishes: VaneWishes = {
      sleep: 'deep',
      cups: null,
      emitters: 'pulsed',
      detector: FAST_SENSOR,
      lineIntervalMs: 10_000,
    };
    const { plan } = planOf({ sleep: 'deep' }, wishes);
    expect(plan.unknowable[0]).toContain('gusts');
    // Awake for far less than 1 % of the time: what is left is the sleeping board and the dividers.
    expect(plan.averageMa).toBeGreaterThan(5.1);
    expect(plan.averageMa).toBeLessThan(5.1 + 5 * 0.5 + 0.1);
  });

  it('lights pulsed lights for half of each read', () => {
    const { plan } = planOf({}, { emitters: 'pulsed', detector: FAST_SENSOR });
    const lights = plan.shares.find(({ what }) => what === 'lights')!;
    expect(lights.duty).toBe(0.5);
  });

  it('tells of a battery that is too small or too low, with one that is enough', () => {
    const { plan, short } = planOf({ battery: { capacityMah: 7000, voltageV: 3.7 }, darkDays: 5 });
    expect(short).toHaveLength(2);
    expect(short[0]).toContain('5 V out of 3.7 V');
    const enough = Math.ceil(plan.neededCapacityMah!);
    expect(short[1]).toContain(`take ${enough} mAh`);
    expect(planOf({ battery: { capacityMah: enough, voltageV: 12 }, darkDays: 5 }).short).toEqual([]);
  });
});
