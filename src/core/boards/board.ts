/** What a controller board can do, as printed in its chip's data sheet. */
export interface Board {
  /** Name used in the instrument file. */
  readonly name: string;
  /** One line a maker recognises. */
  readonly title: string;
  /** Chip name as printed on the data sheet. */
  readonly chip: string;
  /** What its program is written in: a sketch for the chip's usual core, or MicroPython beside a portable unit. */
  readonly language: 'sketch' | 'micropython';
  /** Supply of the chip and reference of its converter. [V] */
  readonly supplyV: number;
  /** Resolution of the converter. [bit] */
  readonly converterBits: number;
  /** Time of one conversion including the core's call. [us] */
  readonly conversionUs: number;
  /** Share of full scale up to which the converter follows the voltage. [-] */
  readonly converterTopShare: number;
  /** Most that the converter itself is off by, in its middle. [counts] */
  readonly converterErrorCounts: number;
  /** What the converter charges to measure: capacitor, resistance before it, and for how long. [pF], [ohm], [us] */
  readonly sampling: { readonly capacitorPf: number; readonly ohm: number; readonly us: number };
  /** Largest source resistance the data sheet advises at the converter's input. [ohm] */
  readonly maxSourceOhm: number;
  /** Most that may leak into or out of an input. [uA] */
  readonly inputLeakageUa: number;
  /** Time to read one pin on or off. [us] */
  readonly digitalReadUs: number;
  /** Time to write one character of a line with its check value. [us] */
  readonly lineCharUs: number;
  /** Pins with a converter channel, in board naming. */
  readonly analogPins: readonly string[];
  /** Number by which the converter knows each of `analogPins`. [-] */
  readonly converterInputs: readonly number[];
  /** Pins that read and write on and off, in board naming. */
  readonly digitalPins: readonly string[];
  /** Pins with an edge interrupt of their own and a pull-up. */
  readonly interruptPins: readonly string[];
  /** Pins that the serial line takes. */
  readonly serialPins: readonly string[];
  /** Current that one pin may carry for long. [mA] */
  readonly pinMa: number;
  /** Current that all pins together may carry. [mA] */
  readonly pinsMa: number;
  /** Program memory left for the program. [byte] */
  readonly flashBytes: number;
  /** Working memory. [byte] */
  readonly ramBytes: number;
  /** Memory that keeps settings without power; 0 where a file in flash does it. [byte] */
  readonly eepromBytes: number;
  /** Current of the whole board by how it waits: running, halted with its clock on, asleep. [mA] */
  readonly currentMa: { readonly awake: number; readonly idle: number; readonly deep: number };
}
