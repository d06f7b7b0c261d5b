import type { HeadPlan } from '../../head/index.ts';
import { forwardVolts, lightResistorOhm } from './lightResistor.ts';

/** Powers that resistors with wires are sold for, smallest first. Common practice, no source. [W] */
const SOLD_W = [0.25, 0.5, 1, 2, 5] as const;

/** Share of its rating that a resistor in a closed box is used at. Common practice, no source. [-] */
const USED_SHARE = 0.5;

/**
 * Power in the fixed resistor of a channel when its sensor conducts as well as it can: all of the supply lies over it. [W]
 *
 * @source P = U²/R
 */
export function channelPowerW({ board, levels }: Pick<HeadPlan, 'board' | 'levels'>): number {
  return board.supplyV ** 2 / levels.resistorOhm;
}

/** Power in the resistor of one light-emitting diode; 0 for a laser module, which has its own. [W] @source P = I²R */
export function lightPowerW({ spec, board }: Pick<HeadPlan, 'spec' | 'board'>): number {
  const { light } = spec;
  if (light.kind === 'laser') return 0;
  const ohm = lightResistorOhm({ spec, board });
  return (board.supplyV - forwardVolts(light.wavelengthNm)) ** 2 / ohm;
}

/** The smallest rating that is used no more than half; `null` where none that is sold will do. [W] */
export function ratingW(powerW: number): number | null {
  return SOLD_W.find((sold) => powerW <= USED_SHARE * sold) ?? null;
}

/** The rating in words for a parts list. */
export function ratingText(powerW: number): string {
  return `${ratingW(powerW) ?? SOLD_W.at(-1)} W`;
}
