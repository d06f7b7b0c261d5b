import type { Board } from '../../boards/index.ts';
import type { CircuitSpec, Detector } from '../headSpec.ts';

/** Time constants until a sensor has followed the lights to 0.7 %: exp(-5). [-] */
const SETTLED = 5;

/** Select lines of a multiplexer, or clock and data of a shift register, in reads of a pin. [-] */
const CHOOSE_READS = 3;

/** A colour sensor is read under red, green and blue, and once without any. [-] */
const COLOUR_LIGHTINGS = 4;

/** What decides how long one read of all channels takes. */
export interface ReadLoop {
  readonly channels: number;
  readonly circuit: Pick<CircuitSpec, 'input' | 'emitters'>;
  readonly detector: Detector;
  /** Largest resistance the converter looks into. [ohm] */
  readonly sourceOhm: number;
  readonly board: Board;
}

/**
 * Conversions that one reading of a channel takes; the first of two is thrown away.
 *
 * A sensor weaker than the converter likes cannot charge its input at once, and behind a multiplexer the wire still
 * holds the voltage of the channel before; with pulsed lights the input still holds that of the channel read before.
 */
export function readsEach({
  circuit,
  sourceOhm,
  board,
}: Pick<ReadLoop, 'circuit' | 'sourceOhm' | 'board'>): 1 | 2 {
  // One wire serves all channels of a ladder: nothing else has been measured on it.
  if (circuit.input === 'ladder') return sourceOhm > board.maxSourceOhm ? 2 : 1;
  const isShared = circuit.input === 'multiplexer' || circuit.emitters === 'pulsed';
  return isShared || sourceOhm > board.maxSourceOhm ? 2 : 1;
}

/** How long the sensors need after the lights have been switched on or off. [us] */
export function settleUs({ riseMs, fallMs }: Pick<Detector, 'riseMs' | 'fallMs'>): number {
  return Math.ceil(SETTLED * Math.max(riseMs, fallMs) * 1000);
}

/**
 * Time of one read of all channels: the one place that knows it, for the speed limit and the program alike. [us]
 *
 * @check test/journeys/programBoards.test.ts: the emulated chip takes as long
 */
export function readUs(loop: ReadLoop): number {
  const { channels, circuit, detector, board } = loop;
  const pin = board.digitalReadUs;
  const each = {
    direct: readsEach(loop) * board.conversionUs,
    digital: pin,
    multiplexer: readsEach(loop) * board.conversionUs + CHOOSE_READS * pin,
    'shift-register': CHOOSE_READS * pin,
    ladder: (readsEach(loop) * board.conversionUs) / channels,
  }[circuit.input];
  const once = channels * each;
  const lightings =
    detector.kind === 'colour-sensor' ? COLOUR_LIGHTINGS : circuit.emitters === 'steady' ? 1 : 2;
  return lightings === 1 ? once : lightings * (once + settleUs(detector));
}

/**
 * Longest time between two reads of a channel: one read of all, and one line written in between. Sending the line does
 * not count, since the serial port does that by itself. [ms]
 *
 * @param loop - With the characters of one line, its end included. [-]
 */
export function loopMs(loop: ReadLoop & { readonly lineChars: number }): number {
  return (readUs(loop) + loop.lineChars * loop.board.lineCharUs) / 1000;
}
