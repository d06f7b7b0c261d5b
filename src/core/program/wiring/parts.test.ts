import { describe, expect, it } from 'vitest';
import { jettyHead, jettyInstrument, type VaneWishes } from '../../../../test/support/avrVane.ts';
import type { HeadSpec } from '../../head/index.ts';
import { partsList } from './parts.ts';

function rows(wishes: VaneWishes = {}, spec: Partial<HeadSpec> = {}): Map<string, [number, string]> {
  const instrument = jettyInstrument(wishes);
  const head = jettyHead(instrument, wishes);
  const list = partsList(instrument, { ...head, spec: { ...head.spec, ...spec } });
  return new Map(list.map(({ quantity, part, value }) => [part, [quantity, value]]));
}

describe('partsList', () => {
  it('has a sensor, a resistor and a light for each channel', () => {
    const parts = rows();
    expect(parts.get('photoresistor')).toEqual([5, '2 kohm lit, 200 kohm dark, as measured behind the disc']);
    expect(parts.get('resistor of a channel')).toEqual([5, '20 kohm, 1 %, 0.25 W']);
    expect(parts.get('light-emitting diode')).toEqual([5, '630 nm, run at 10 mA']);
    // (5 V - 1.9 V) / 10 mA = 310 ohm; the next of 270, 330 that gives no more current
    expect(parts.get('resistor of a light-emitting diode')).toEqual([5, '330 ohm, 0.25 W']);
  });

  it('asks for resistors that are used at half of their rating at most', () => {
    // 5 V - 1.9 V over 27 ohm, E12 above 3.1 V / 120 mA = 25.8 ohm: 0.356 W, which a 1 W resistor bears with room to spare.
    const bright = rows({}, { light: { kind: 'led', currentMa: 120, wavelengthNm: 630 } });
    expect(bright.get('resistor of a light-emitting diode')).toEqual([5, '27 ohm, 1 W']);
  });

  it('lists the resistors of one wire by value, with tolerance and drift', () => {
    expect(rows({ input: 'ladder' }).get('resistor of the ladder')).toEqual([
      4,
      '10 kohm, 1 %, 100 ppm/K, 0.25 W',
    ]);
    expect(rows({ input: 'ladder' }).get('comparator')![0]).toBe(5);
    expect(rows({ input: 'digital', gate: 'schmitt' }).get('Schmitt inverter')![0]).toBe(5);
  });

  it('counts with the code', () => {
    expect(rows({ positions: 8 }).get('photoresistor')![0]).toBe(3);
  });

  it('has a cup switch only where there are cups', () => {
    expect(rows().get('cup switch')).toEqual([1, 'closes 2 times a turn']);
    expect(rows({ cups: null }).has('cup switch')).toBe(false);
  });

  it('names phototransistor and laser as they are', () => {
    const parts = rows(
      {},
      {
        detector: {
          kind: 'phototransistor',
          litMa: 0.5,
          darkMa: 0.005,
          saturationV: 0.4,
          riseMs: 0.02,
          fallMs: 0.02,
          spread: 0.2,
        },
        light: { kind: 'laser', powerMw: 0.9, wavelengthNm: 650, acceptHazard: false },
      },
    );
    expect(parts.get('phototransistor')).toEqual([5, '0.5 mA lit, 0.005 mA dark, behind the disc']);
    expect(parts.get('laser module')).toEqual([5, '650 nm, 0.9 mW']);
    expect(parts.has('light-emitting diode')).toBe(false);
  });

  it('never gives a diode more current than asked for', () => {
    const volts = { 940: 1.3, 630: 1.9, 570: 2.1, 470: 3 };
    for (const [wavelengthNm, drop] of Object.entries(volts)) {
      for (let currentMa = 0.1; currentMa < 40; currentMa *= 1.07) {
        const light = { kind: 'led' as const, currentMa, wavelengthNm: Number(wavelengthNm) };
        const [, text] = rows({}, { light }).get('resistor of a light-emitting diode')!;
        const ohm = parseFloat(text) * (text.includes('kohm') ? 1000 : 1);
        const flowsMa = ((5 - drop) / ohm) * 1000;
        expect(flowsMa).toBeLessThanOrEqual(currentMa * (1 + 1e-9));
        expect(flowsMa).toBeGreaterThan(currentMa * 0.8); // widest gap of E12 is 1.25, from 12 to 15
      }
    }
  });
});
