import type { CodeTable } from '../../codes/index.ts';
import { sampleFlags, type Sample } from '../../record/index.ts';

/** What the detectors read of a sample; the rest may be missing. */
export type FaultSample = Pick<
  Sample,
  'atMs' | 'headingDeg' | 'speedMPerS' | 'flags' | 'word' | 'pulses' | 'edges' | 'stream' | 'line'
> &
  Partial<Pick<Sample, 'counts'>>;

/** A sample with what the one before it tells; one object is used again and again, so keep nothing of it. */
export interface Seen {
  atMs: number;
  /** Since the sample before; 0 for the first one and after a gap, when nobody saw what happened. [ms] */
  stepMs: number;
  /** Time without a sample just before this one, where it is far longer than usual; else 0. [ms] */
  gapMs: number;
  /** Usual time between samples. [ms] */
  usualMs: number;
  /** Position of the disc, or sector of the heading where no words were logged; `null` = not read. [-] */
  position: number | null;
  /** Position of the sample before, `null` also after a gap. [-] */
  before: number | null;
  word: string | null;
  /** The word is in no table. */
  isIllegal: boolean;
  speedMPerS: number | null;
  headingDeg: number | null;
  flags: number;
  counts: readonly number[] | null;
  /** Pulses and edges since the sample before; `null` = not known. [-] */
  pulses: number | null;
  edges: number | null;
  /** The controller's totals began again. */
  isRestart: boolean;
  stream: number;
  line: number;
  /** How many lines further than the sample before, in the same source; 0 when in another one. [-] */
  lineStep: number;
}

/** Samples this many usual steps apart have a gap between them. [-] */
const GAP_STEPS = 5;
/** Shortest silence that counts as a gap. [ms] */
const GAP_LEAST_MS = 120_000;
/** Steps of one source that are learnt from before gaps are told. [-] */
const LEARNT_STEPS = 20;

/** Turns samples into what the detectors see. */
export class SeenReader {
  readonly #code: CodeTable;
  readonly #positions = new Map<string, number | null>();
  readonly #seen: Seen = {
    atMs: -Infinity,
    stepMs: 0,
    gapMs: 0,
    usualMs: 0,
    position: null,
    before: null,
    word: null,
    isIllegal: false,
    speedMPerS: null,
    headingDeg: null,
    flags: 0,
    counts: null,
    pulses: null,
    edges: null,
    isRestart: false,
    stream: 0,
    line: 0,
    lineStep: 0,
  };
  #pulses: number | null = null;
  #edges: number | null = null;
  #steps = 0;

  constructor(code: CodeTable) {
    this.#code = code;
  }

  /** The sample as the detectors see it, or `null` for one that is not later than the one before. [ms UTC] */
  take(sample: FaultSample): Seen | null {
    const seen = this.#seen;
    if (!(sample.atMs > seen.atMs)) return null;
    this.#time(sample);
    this.#reading(sample);
    this.#cups(sample);
    seen.flags = sample.flags;
    seen.counts = sample.counts ?? null;
    seen.speedMPerS = sample.speedMPerS;
    seen.headingDeg = sample.headingDeg;
    seen.lineStep = sample.stream === seen.stream ? sample.line - seen.line : 0;
    seen.stream = sample.stream;
    seen.line = sample.line;
    return seen;
  }

  #time({ atMs }: FaultSample): void {
    const seen = this.#seen;
    const step = atMs - seen.atMs;
    seen.atMs = atMs;
    if (step === Infinity) return;
    const limit = Math.max(GAP_LEAST_MS, GAP_STEPS * seen.usualMs);
    seen.gapMs = this.#steps >= LEARNT_STEPS && step > limit ? step : 0;
    seen.stepMs = seen.gapMs > 0 ? 0 : step;
    if (seen.gapMs > 0) return;
    // A running median of a kind: each step pulls it by a share, however long the step is.
    const pull = this.#steps < LEARNT_STEPS ? 1 / (this.#steps + 1) : 0.02;
    seen.usualMs +=
      pull * (Math.min(step, this.#steps < LEARNT_STEPS ? step : 3 * seen.usualMs) - seen.usualMs);
    this.#steps++;
  }

  #reading({ word, headingDeg, flags }: FaultSample): void {
    const seen = this.#seen;
    seen.before = seen.gapMs > 0 ? null : seen.position;
    seen.word = word;
    const { positions } = this.#code;
    if (word === null) {
      seen.isIllegal = (flags & sampleFlags.illegalWord) !== 0;
      seen.position =
        headingDeg === null ? null : Math.floor((headingDeg * positions) / 360 + 0.5) % positions;
      return;
    }
    let position = this.#positions.get(word);
    if (position === undefined) {
      position = this.#code.positionOf(word);
      // Rubbish of many shapes must not fill the memory.
      if (this.#positions.size < 4096) this.#positions.set(word, position);
    }
    seen.position = position ?? this.#code.nextPosition(word, seen.before);
    seen.isIllegal = seen.position === null && (this.#code.absolute || seen.before !== null);
  }

  #cups({ pulses, edges }: FaultSample): void {
    const seen = this.#seen;
    const [pulsesBefore, edgesBefore] = [this.#pulses, this.#edges];
    this.#pulses = pulses;
    this.#edges = edges;
    const fell = pulses !== null && pulsesBefore !== null && pulses < pulsesBefore;
    // A counter of 32 bits that runs over is no restart.
    seen.isRestart = fell && pulsesBefore < 4_000_000_000;
    const isKnown = !fell && seen.gapMs === 0 && pulses !== null && pulsesBefore !== null;
    seen.pulses = isKnown ? pulses - pulsesBefore : null;
    seen.edges = isKnown && edges !== null && edgesBefore !== null ? Math.max(0, edges - edgesBefore) : null;
  }
}
