import type { FaultSample } from './seen.ts';

/** Samples of one station side by side, as a store hands them out: the fast way through a year of faults. */
export interface FaultColumns {
  /** Instants, rising. [ms UTC] */
  readonly atMs: Float64Array;
  /** NaN = not read. [deg] */
  readonly headingDeg: Float64Array;
  /** NaN = not read. [m/s] */
  readonly speedMPerS: Float64Array;
  readonly flags: Float64Array;
  /** Place of the word in `words`; NaN = none was logged. [-] */
  readonly word: Float64Array;
  readonly words: readonly string[];
  /** Totals of the controller; NaN = not logged. [-] */
  readonly pulses: Float64Array;
  readonly edges: Float64Array;
  readonly stream: Float64Array;
  readonly line: Float64Array;
  /** Counts of the few samples that have them, by instant. [ms UTC], [counts] */
  readonly countsAt: ReadonlyMap<number, readonly number[]>;
}

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

/**
 * Each sample of columns in turn; one object is used again and again, so keep nothing of it.
 *
 * @param columns - [ms UTC], [deg], [m/s]
 * @param take - Takes one sample.
 * @check src/core/faults/readings/faultColumns.test.ts
 */
export function eachSample(columns: FaultColumns, take: (sample: FaultSample) => void): void {
  const { atMs, headingDeg, speedMPerS, flags, word, words, pulses, edges, stream, line, countsAt } = columns;
  const isLit = countsAt.size > 0;
  const sample = { flags: 0, stream: 0, line: 0 } as { -readonly [K in keyof FaultSample]: FaultSample[K] };
  for (let i = 0; i < atMs.length; i++) {
    const at = atMs[i]!;
    sample.atMs = at;
    sample.headingDeg = orNull(headingDeg[i]!);
    sample.speedMPerS = orNull(speedMPerS[i]!);
    sample.flags = flags[i]!;
    sample.word = words[word[i]!] ?? null;
    sample.counts = isLit ? (countsAt.get(at) ?? null) : null;
    sample.pulses = orNull(pulses[i]!);
    sample.edges = orNull(edges[i]!);
    sample.stream = stream[i]!;
    sample.line = line[i]!;
    take(sample);
  }
}

const numbers = <T>(things: readonly T[], of: (thing: T) => number | null): Float64Array =>
  Float64Array.from(things, (thing) => of(thing) ?? NaN);

/**
 * Columns of samples.
 *
 * @param samples - In order of time. [ms UTC]
 * @check src/core/faults/readings/faultColumns.test.ts
 */
export function faultColumnsOf(samples: readonly FaultSample[]): FaultColumns {
  const places = new Map<string, number>();
  const word = numbers(samples, (sample) => {
    if (sample.word === null) return null;
    const place = places.get(sample.word) ?? places.size;
    places.set(sample.word, place);
    return place;
  });
  return {
    atMs: numbers(samples, ({ atMs }) => atMs),
    headingDeg: numbers(samples, ({ headingDeg }) => headingDeg),
    speedMPerS: numbers(samples, ({ speedMPerS }) => speedMPerS),
    flags: numbers(samples, ({ flags }) => flags),
    word,
    words: [...places.keys()],
    pulses: numbers(samples, ({ pulses }) => pulses),
    edges: numbers(samples, ({ edges }) => edges),
    stream: numbers(samples, ({ stream }) => stream),
    line: numbers(samples, ({ line }) => line),
    countsAt: new Map(samples.flatMap(({ atMs, counts }) => (counts ? [[atMs, counts] as const] : []))),
  };
}
