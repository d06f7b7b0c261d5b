import {
  ledgerCounts,
  RecordReader,
  type LedgerReason,
  type LedgerRow,
  type Placement,
  type ReadingRule,
} from '../core/record/index.ts';
import { HeadingSum, READ_HEADING, READ_SPEED } from '../core/wind/index.ts';
import type { RawLog, SampleStore } from '../ports/index.ts';
import { chosenRule, placementsOf, type ReadingChoices } from './logChoices.ts';

/** What a reading of a station comes to. */
export interface ReadingFigures {
  /** [-] */
  readonly samples: number;
  readonly headings: number;
  readonly speeds: number;
  /** [ms UTC] */
  readonly firstMs: number;
  readonly lastMs: number;
  /** Direction of the mean of unit vectors; `null` = none was read, or no agreement. [deg] */
  readonly meanHeadingDeg: number | null;
  /** [m/s] */
  readonly meanSpeedMPerS: number | null;
}

/** Two readings of the same raw bytes side by side; `null` where a reading has nothing of the station. */
export interface ComparedReadings {
  readonly stations: readonly {
    readonly station: string;
    readonly before: ReadingFigures | null;
    readonly after: ReadingFigures | null;
  }[];
  /** Repairs whose counts differ. [-] */
  readonly ledger: readonly {
    readonly reason: LedgerReason;
    readonly before: number;
    readonly after: number;
  }[];
}

/** Sums of samples in any order, as old logs come. */
class Figures {
  readonly #heading = new HeadingSum();
  #samples = 0;
  #speeds = 0;
  #speedSum = 0;
  #firstMs = Infinity;
  #lastMs = -Infinity;

  add(atMs: number, headingDeg: number | null, speedMPerS: number | null): void {
    this.#samples++;
    this.#firstMs = Math.min(this.#firstMs, atMs);
    this.#lastMs = Math.max(this.#lastMs, atMs);
    if (headingDeg !== null) this.#heading.add(headingDeg);
    if (speedMPerS === null) return;
    this.#speeds++;
    this.#speedSum += speedMPerS;
  }

  get figures(): ReadingFigures {
    const headings = this.#heading.weight;
    return {
      samples: this.#samples,
      headings,
      speeds: this.#speeds,
      firstMs: this.#firstMs,
      lastMs: this.#lastMs,
      meanHeadingDeg: headings === 0 ? null : this.#heading.mean().headingDeg,
      meanSpeedMPerS: this.#speeds === 0 ? null : this.#speedSum / this.#speeds,
    };
  }
}

type OfStations = ReadonlyMap<string, Figures>;
type Counts = ReadonlyMap<LedgerReason, number>;

/** The reading that the store holds. */
async function stored(store: SampleStore): Promise<{ stations: OfStations; counts: Counts }> {
  const stations = new Map<string, Figures>();
  for (const { station, firstMs, lastMs } of await store.stations()) {
    const figures = new Figures();
    for await (const columns of store.columns({ station, fromMs: firstMs, untilMs: lastMs + 1 })) {
      const { atMs, headingDeg, speedMPerS, read } = columns;
      for (let i = 0; i < atMs.length; i++) {
        const [hasHeading, hasSpeed] = [(read[i]! & READ_HEADING) !== 0, (read[i]! & READ_SPEED) !== 0];
        figures.add(atMs[i]!, hasHeading ? headingDeg[i]! : null, hasSpeed ? speedMPerS[i]! : null);
      }
    }
    stations.set(station, figures);
  }
  return { stations, counts: new Map((await store.ledgerCounts()).map((row) => [row.reason, row.count])) };
}

/** Another reading of the raw log; of it only sums are kept, so that years of lines need no room. */
async function reread(
  log: RawLog,
  rule: ReadingRule,
  choices: ReadingChoices,
): Promise<{ stations: OfStations; counts: Counts }> {
  const reader = (placements: readonly Placement[]): RecordReader =>
    new RecordReader((begin) => chosenRule(rule, begin.rule, choices, placements));
  const survey = reader([]);
  if ((choices.moments?.length ?? 0) > 0) {
    for await (const entries of log.read(0)) {
      for (const entry of entries) survey.take(entry);
      survey.drain();
    }
  }
  const second = reader(placementsOf(survey.spans(), choices));
  const stations = new Map<string, Figures>();
  let counts: Counts = new Map();
  for await (const entries of log.read(0)) {
    for (const entry of entries) second.take(entry);
    const { samples, ledger } = second.drain();
    for (const { station, atMs, headingDeg, speedMPerS } of samples) {
      const figures = stations.get(station) ?? new Figures();
      stations.set(station, figures);
      figures.add(atMs, headingDeg, speedMPerS);
    }
    counts = withMore(counts, ledger);
  }
  return { stations, counts };
}

function withMore(counts: Counts, rows: readonly LedgerRow[]): Counts {
  const more = new Map(counts);
  for (const { reason, count } of ledgerCounts(rows)) more.set(reason, (more.get(reason) ?? 0) + count);
  return more;
}

/**
 * What another way of reading would make of the same raw bytes, beside what the store holds; nothing is stored.
 *
 * @param parts - The store with its reading, the raw log, and the other rule and choices.
 */
export async function compareReadings(parts: {
  readonly store: SampleStore;
  readonly log: RawLog;
  readonly rule: ReadingRule;
  readonly choices: ReadingChoices;
}): Promise<ComparedReadings> {
  const before = await stored(parts.store);
  const after = await reread(parts.log, parts.rule, parts.choices);
  const names = [...new Set([...before.stations.keys(), ...after.stations.keys()])].sort();
  const reasons = [...new Set([...before.counts.keys(), ...after.counts.keys()])].sort();
  return {
    stations: names.map((station) => ({
      station,
      before: before.stations.get(station)?.figures ?? null,
      after: after.stations.get(station)?.figures ?? null,
    })),
    ledger: reasons
      .map((reason) => ({
        reason,
        before: before.counts.get(reason) ?? 0,
        after: after.counts.get(reason) ?? 0,
      }))
      .filter((row) => row.before !== row.after),
  };
}
