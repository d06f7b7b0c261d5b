import type { CodeTable } from '../codes/index.ts';
import type { AsBuilt } from '../instrument/index.ts';
import type { Figure } from './angles/fitAngles.ts';
import type { Cause } from './causes/cause.ts';
import type { AsBuiltChange } from './certificate/compare.ts';
import type { ColumnLevels } from './levels/channelLevels.ts';
import type { Recording } from './reading/recording.ts';
import type { BuiltPosition, TableError } from './table/builtTable.ts';
import type { Interpolation } from './table/edgeCurves.ts';
import type { Misreads } from './table/misreads.ts';

/** One channel of the code as the recording has it. */
export interface FittedChannel {
  readonly channel: number;
  /** Column that shows it, with the pin behind it; `null` when none does. */
  readonly column: number | null;
  readonly pin: string | null;
  /** On another input than the drawing has it. */
  readonly moved: boolean;
  /** Reads the other way round than the drawing has it. */
  readonly inverted: boolean;
  /** The recording leaves open which column it is, and the drawing's was taken. */
  readonly undecided: boolean;
  /** Whether it reads more counts in light. */
  readonly litIsHigh: boolean;
  readonly levels: ColumnLevels | null;
  /** Off its place along the track, clockwise positive. [mm], `null` without a table */
  readonly alongMm: Figure | null;
  /** Windows wider than the drawing's, as this channel sees them. [mm] */
  readonly growthMm: Figure | null;
  /** Turn from dark to lit across an edge. [deg] */
  readonly edgeWidthDeg: number | null;
}

/** How the wires run, and how sure that is. */
export interface FittedWiring {
  /** Share of the recording that this wiring explains. [-] */
  readonly explainedShare: number;
  /** How sure it is against all other wirings that explain as much. [-], 0..1 */
  readonly confidence: number;
  /** Other wirings that explain as much, in words, most believable first. */
  readonly alternatives: readonly string[];
  /** Inputs in the opposite order. */
  readonly isOrderReversed: boolean;
  /** The disc turns against drawing and word; `null` when nobody said which way the vane was turned. */
  readonly reversed: boolean | null;
}

/** Once-per-turn error: the middle of the pattern off the shaft. */
export interface FittedBore {
  /** How far. [mm] */
  readonly offMm: Figure;
  /** Disc angle towards which the pattern's middle stands off the shaft; the bore is off the other way. [deg] */
  readonly patternTowardsDeg: number;
  readonly patternTowardsSigmaDeg: number;
  /** Position towards which the bore is off the pattern's middle. */
  readonly boreTowardsPosition: number;
  /** Error it makes once a turn on the innermost and on the outermost track. [deg] */
  readonly innermostDeg: number;
  readonly outermostDeg: number;
}

/** What cannot be known from this recording, and what to record to know it. */
export interface Unknown {
  readonly what: string;
  readonly why: string;
  readonly recordNext: string;
}

/** The disc as made, found from the recording. */
export interface FittedDisc {
  readonly bore: FittedBore;
  /** Twice-per-turn error, as from a tilted disc. [deg] */
  readonly twiceDeg: Figure;
  /** What the vane turns on after turning back before the disc follows; `null` without marks held both ways. [deg] */
  readonly playDeg: Figure | null;
  /** Scatter of single edges. [mm] */
  readonly edgeSdMm: number;
  readonly positions: readonly BuiltPosition[];
  /** Words that never showed, and words that go on into their neighbours. */
  readonly missing: readonly number[];
  readonly neverEnding: readonly number[];
  readonly tableError: TableError;
  readonly interpolation: Interpolation;
  /** Errors on this very recording: read by the drawing, and read by the table. */
  readonly byDrawing: Misreads;
  readonly byTable: Misreads;
  /** Disc angle less the maker's marks; `null` without marks. [deg] */
  readonly markOffsetDeg: Figure | null;
  /** Full turns in the recording, both ways together. [turns] */
  readonly turns: number;
}

/** Everything that a recorded turn tells about a build. */
export interface Fit {
  /** Whether the build, read by its table, meets the need. */
  readonly verdict: 'yes' | 'no';
  /** Why, most important first. */
  readonly reasons: readonly string[];
  readonly recordedAt: string;
  /** The recording as it was used, decoded numbers undone. */
  readonly recording: Recording;
  /** What decoded numbers were taken for; `null` where rows hold counts or bits. */
  readonly numbersWere: string | null;
  readonly columns: readonly ColumnLevels[];
  /** `null` where no wiring of this disc explains the recording. */
  readonly wiring: FittedWiring | null;
  readonly channels: readonly FittedChannel[];
  /** A known code that fits better than the file's; `null` where there is none. */
  readonly otherCode: { readonly code: CodeTable; readonly explainedShare: number } | null;
  /** `null` where not every channel could be followed. */
  readonly disc: FittedDisc | null;
  /** Ranked: what costs most first. */
  readonly causes: readonly Cause[];
  readonly unknowns: readonly Unknown[];
  /** What has changed since the table in the file; `null` when there was none. */
  readonly changes: readonly AsBuiltChange[] | null;
  /** What `--write` puts in the file; `null` where nothing safe can be said. */
  readonly asBuilt: AsBuilt | null;
}
