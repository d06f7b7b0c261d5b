import type { HeadPlan } from '../../head/index.ts';

/** Forward voltage of a light-emitting diode by colour; common practice, no source: the diode's own sheet decides. [V] */
export function forwardVolts(wavelengthNm: number): number {
  if (wavelengthNm >= 780) return 1.3;
  if (wavelengthNm >= 590) return 1.9;
  return wavelengthNm >= 550 ? 2.1 : 3;
}

/** E12 values of one decade, IEC 60063. [-] */
const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100];

/** Next E12 value that is not smaller, so that the current is not larger than asked for. [ohm] */
function nextE12(ohm: number): number {
  const decade = 10 ** (Math.floor(Math.log10(ohm)) - 1);
  const step = E12.find((value) => value * decade >= ohm * (1 - 1e-9))!;
  return Math.round(step * decade * 1e6) / 1e6;
}

/** Resistor of one light-emitting diode, so that its current is not larger than asked for. [ohm] */
export function lightResistorOhm({ spec, board }: Pick<HeadPlan, 'spec' | 'board'>): number {
  const { light } = spec;
  if (light.kind === 'laser') return 0;
  return nextE12(((board.supplyV - forwardVolts(light.wavelengthNm)) * 1000) / light.currentMa);
}
