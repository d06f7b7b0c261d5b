/** One file of a recorded turn, decoded to text. */
export interface RecordingFile {
  readonly name: string;
  readonly text: string;
}

/** Which way the vane was turned, seen from above. */
export type Turned = 'clockwise' | 'counter-clockwise';

/** What the maker tells about the files, where the files do not say it themselves. */
export interface ReadingHints {
  /** Channels of the code: gives bit words their lost leading zeros back. [-] */
  readonly channels?: number;
  /** Full scale of the converter, for counts given as volts. [counts], [V] */
  readonly scaleCounts?: number;
  readonly supplyV?: number;
  /** Which way each file was turned, by its name; else its name is looked at. */
  readonly turned?: Readonly<Record<string, Turned>>;
  /** True when the comma is a decimal comma in files that also part columns by it. */
  readonly decimalComma?: boolean;
}

/** Kinds of repair, one word each. */
export type RepairKind =
  | 'byte-order-mark'
  | 'empty-bytes'
  | 'rubbish'
  | 'ready-text'
  | 'heading-line'
  | 'refused-line'
  | 'cut-line'
  | 'column-count'
  | 'missing-value'
  | 'not-a-number'
  | 'glued-line'
  | 'split-line'
  | 'duplicate'
  | 'same-time'
  | 'time-went-back'
  | 'restart'
  | 'clock-wrapped'
  | 'gap'
  | 'out-of-range'
  | 'spike'
  | 'no-times'
  | 'monitor-times'
  | 'decimal-comma'
  | 'zeros-restored'
  | 'volts'
  | 'spreadsheet'
  | 'left-out-column'
  | 'turned-by-name';

/** One thing that was dropped, joined, moved or guessed. */
export interface Repair {
  readonly file: string;
  /** Line of the file, 1 the first; 0 when it is about the whole file. */
  readonly line: number;
  readonly kind: RepairKind;
  /** What was done, in a sentence. */
  readonly what: string;
}

/** Samples that follow each other without a restart or a long gap. */
export interface Stretch {
  readonly file: string;
  /** Line of the first sample. */
  readonly fromLine: number;
  /** Rising. [ms], n = samples */
  readonly timesMs: readonly number[];
  /** One row a sample, one value a column: counts, bits, or one decoded number. n = samples */
  readonly rows: readonly (readonly number[])[];
  /** Known angle of the vane at a sample, where the maker noted one. [deg], n = samples */
  readonly marksDeg: readonly (number | null)[];
  readonly turned: Turned | null;
}

/** A recorded turn after repair. */
export interface Recording {
  /** What a row holds: converter counts, one bit a channel, or only one number that a program has decoded. */
  readonly content: 'counts' | 'bits' | 'numbers';
  /** Name of each column as written, or `column 0` and so on. */
  readonly columns: readonly string[];
  readonly stretches: readonly Stretch[];
  /** The repair ledger, in the order of the files. */
  readonly repairs: readonly Repair[];
  /** False when no file gave times and even spacing was assumed. */
  readonly hasTimes: boolean;
}
