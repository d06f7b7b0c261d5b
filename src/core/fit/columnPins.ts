import { gatheredInputs, type HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import type { Recording } from './reading/recording.ts';

/** Pins that the drawing has for each channel. n = channels */
export function drawnPins({ controller }: Instrument, { board, circuit, disc }: HeadPlan): readonly string[] {
  const channels = disc.code.channels.length;
  const places = gatheredInputs(circuit.input) ?? board.analogPins;
  return Array.from({ length: channels }, (_, c) => controller.channelPins?.[c] ?? places[c] ?? `input ${c}`);
}

/**
 * Pin behind each recorded column.
 *
 * A column that bears the name of a pin is that pin. Our own lines send channels in the order of the program, which
 * follows the table in the file where there is one; all other columns stand in the order of the drawing's pins.
 */
export function columnPins(recording: Recording, instrument: Instrument, head: HeadPlan): string[] {
  const drawn = drawnPins(instrument, head);
  const programmed = instrument.asBuilt?.channels.map(({ pin }) => pin) ?? drawn;
  const isOurs = recording.columns.every((name, c) => name === `column ${c}`);
  const named = recording.columns.map(
    (name) => head.board.analogPins.find((pin) => pin === name.toUpperCase()) ?? null,
  );
  const areNamed = named.every((pin, c) => pin !== null && named.indexOf(pin) === c);
  // Names such as a0 to a4 that are no pins of a maker who wired others: then they only count.
  const usesThem = areNamed && named.every((pin) => drawn.includes(pin!) || programmed.includes(pin!));
  return recording.columns.map((_, c) =>
    usesThem ? named[c]! : ((isOurs ? programmed[c] : drawn[c]) ?? `column ${c}`),
  );
}
