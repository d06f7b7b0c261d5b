import {
  qualityBits,
  READ_HEADING,
  READ_SPEED,
  SampleScreen,
  type QualityFlag,
  type QualitySpan,
  type SampleColumns,
  type SampleLimits,
} from '../../wind/index.ts';

const DAY_MS = 86_400_000;

/** Samples of one day that carry a flag, counted by flag. [-] */
export interface FlaggedDay {
  /** Start of the day in UTC. [ms UTC] */
  readonly startMs: number;
  readonly counts: Readonly<Record<QualityFlag, number>>;
}

/** Flags that are known only once they have lasted: counted by their spans. */
const BY_SPAN = qualityBits['speed-stuck'] | qualityBits['heading-stuck'] | qualityBits['speed-step'];

const flags = Object.keys(qualityBits) as QualityFlag[];
const noCounts = (): Record<QualityFlag, number> =>
  Object.fromEntries(flags.map((flag) => [flag, 0])) as Record<QualityFlag, number>;

/**
 * Counts the quality flags of a record by day, beside the data and without changing any of it.
 *
 * @source as `SampleScreen`.
 * @check src/core/review/sum/qualityTally.test.ts
 */
export class QualityTally {
  readonly spans: QualitySpan[] = [];
  private readonly screen: SampleScreen;
  private readonly intervalMs: number;
  private readonly byDay = new Map<number, Record<QualityFlag, number>>();
  private today = { day: NaN, counts: noCounts() };

  /** @param limits - As `sampleLimits` gives them. [ms], [m/s], [deg/s] */
  constructor(limits: SampleLimits) {
    this.screen = new SampleScreen(limits);
    this.intervalMs = limits.intervalMs;
  }

  /** Takes in the samples that follow. [ms UTC], [deg], [m/s] */
  addColumns({ atMs, headingDeg, speedMPerS, read }: SampleColumns): void {
    const { screen } = this;
    for (let i = 0; i < atMs.length; i++) {
      const bits = read[i]!;
      const found = screen.add(
        atMs[i]!,
        (bits & READ_HEADING) === 0 ? null : headingDeg[i]!,
        (bits & READ_SPEED) === 0 ? null : speedMPerS[i]!,
      );
      if ((found & ~BY_SPAN) !== 0) this.note(atMs[i]!, found & ~BY_SPAN);
    }
    this.noteSpans(screen.takeSpans());
  }

  /** Ends what is open, as at the end of the record. */
  end(): void {
    this.noteSpans(this.screen.end());
  }

  /** Days that have any flag, oldest first. */
  days(): FlaggedDay[] {
    return [...this.byDay]
      .sort(([a], [b]) => a - b)
      .map(([day, counts]) => ({ startMs: day * DAY_MS, counts }));
  }

  /** Samples by flag, all days together. [-] */
  totals(): Record<QualityFlag, number> {
    const totals = noCounts();
    for (const counts of this.byDay.values()) for (const flag of flags) totals[flag] += counts[flag];
    return totals;
  }

  private dayOf(atMs: number): Record<QualityFlag, number> {
    const day = Math.floor(atMs / DAY_MS);
    if (day !== this.today.day) {
      this.today = { day, counts: this.byDay.get(day) ?? noCounts() };
      this.byDay.set(day, this.today.counts);
    }
    return this.today.counts;
  }

  private note(atMs: number, bits: number): void {
    const counts = this.dayOf(atMs);
    for (const flag of flags) if ((bits & qualityBits[flag]) !== 0) counts[flag]++;
  }

  /** Counts the samples of spans as often as the clock has them there. */
  private noteSpans(spans: readonly QualitySpan[]): void {
    for (const span of spans) {
      this.spans.push(span);
      for (let from = span.fromMs; from <= span.toMs; from = (Math.floor(from / DAY_MS) + 1) * DAY_MS) {
        const until = Math.min(span.toMs, (Math.floor(from / DAY_MS) + 1) * DAY_MS - 1);
        this.dayOf(from)[span.flag] += Math.floor((until - from) / this.intervalMs) + 1;
      }
    }
  }
}
