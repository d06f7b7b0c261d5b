/** What a controller board can do, as printed in its chip's data sheet. */
export interface Board {
  /** Name used in the instrument file. */
  readonly name: string;
  /** One line a maker recognises. */
  readonly title: string;
  /** Chip name as printed on the data sheet. */
  readonly chip: string;
  /** Supply of the chip and reference of its converter. [V] */
  readonly supplyV: number;
  /** Resolution of the converter. [bit] */
  readonly converterBits: number;
  /** Time of one conversion including the core's call. [us] */
  readonly conversionUs: number;
  /** Largest source resistance the data sheet advises at the converter's input. [ohm] */
  readonly maxSourceOhm: number;
  /** Pins with a converter channel, in board naming. */
  readonly analogPins: readonly string[];
  /** Pins that read and write on and off, in board naming. */
  readonly digitalPins: readonly string[];
  /** Pins with an edge interrupt of their own. */
  readonly interruptPins: readonly string[];
  /** Program memory left for the program. [byte] */
  readonly flashBytes: number;
  /** Working memory. [byte] */
  readonly ramBytes: number;
}
