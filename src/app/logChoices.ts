import type {
  DateOrder,
  LogSpeedUnit,
  Moment,
  Placement,
  ReadingRule,
  SegmentSpan,
} from '../core/record/index.ts';
import { placeSegments } from '../core/record/index.ts';

/** What a maker may say about how lines are read; kept beside the raw log, so that a rebuild reads the same. */
export interface ReadingChoices {
  readonly zone?: string;
  readonly dateOrder?: DateOrder;
  readonly decimalComma?: boolean;
  readonly speedUnit?: LogSpeedUnit;
  readonly headingAs?: 'degrees' | 'positions';
  readonly compassLanguage?: 'english' | 'german' | 'romance';
  readonly startLabelledMs?: number;
  /** Remembered moments of runs without a clock. */
  readonly moments?: readonly RememberedMoment[];
}

/** "I started it on Sunday about 10": an instant for a run of a source. */
export interface RememberedMoment extends Moment {
  readonly stream: number;
  readonly segment: number;
}

/** The rule of a source: the instrument's, what was said when it came, and what has been said since. */
export function chosenRule(
  base: ReadingRule,
  ofSource: Partial<ReadingRule> | undefined,
  { moments: _, ...said }: ReadingChoices,
  placements: readonly Placement[],
): ReadingRule {
  return { ...base, ...ofSource, ...said, placements };
}

/** Placements of every run that a moment tells, or that lies between two such runs. */
export function placementsOf(spans: readonly SegmentSpan[], { moments = [] }: ReadingChoices): Placement[] {
  const streams = [...new Set(spans.map(({ stream }) => stream))];
  return streams.flatMap((stream) =>
    placeSegments(
      spans.filter((span) => span.stream === stream),
      (span) => moments.filter((moment) => moment.stream === stream && moment.segment === span.segment),
    ),
  );
}
