import type { Board } from '../../boards/index.ts';
import type { CircuitSpec } from '../headSpec.ts';
import { readsEach } from './readLoop.ts';

/**
 * What an analog multiplexer adds to a channel: resistance of a closed switch, and capacity of its common pin with the wire.
 *
 * Values from memory of the 16-way 74HC4067 class: 70 ohm typical and 180 ohm at most at 4.5 V, 50 pF at the common pin.
 */
export const MULTIPLEXER = { onOhm: 180, commonPf: 50 } as const;

/** What decides how well the converter's input has settled when it is measured. */
export interface SettlingPath {
  readonly circuit: Pick<CircuitSpec, 'input' | 'emitters'>;
  /** Largest resistance the converter looks into, the multiplexer's included. [ohm] */
  readonly sourceOhm: number;
  readonly board: Board;
}

/**
 * Share of the voltage of the channel before that is still there when a channel is measured. [-]
 *
 * The sampling capacitor of the converter is charged through the source; behind a multiplexer the capacity of the common pin
 * too, for which the conversion that is thrown away leaves time.
 *
 * @source derived: exp(−t/RC); sampling times and capacitors from the data sheets, see `boards`.
 * @check src/core/head/circuit/settling.test.ts (10 kohm, as the ATmega328P's sheet advises, leaves half a count of ten bits)
 */
export function unsettledShare(path: SettlingPath): number {
  const { circuit, sourceOhm, board } = path;
  const { capacitorPf, ohm, us } = board.sampling;
  const reads = readsEach(path);
  const kept = Math.exp(-(reads * us) / ((sourceOhm + ohm) * capacitorPf * 1e-6));
  if (circuit.input !== 'multiplexer') return kept;
  const common = Math.exp(-board.conversionUs / (sourceOhm * (MULTIPLEXER.commonPf + capacitorPf) * 1e-6));
  return Math.min(1, kept + common);
}
