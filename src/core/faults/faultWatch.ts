import type { Detector } from './detector.ts';
import type { Finding } from './finding.ts';
import { detectorsFor } from './detectorsFor.ts';
import { explained } from './explained.ts';
import { NeighbourWatch } from './motion/neighbourWatch.ts';
import { eachSample, type FaultColumns } from './readings/faultColumns.ts';
import { SeenReader, type FaultSample } from './readings/seen.ts';
import type { FaultSetting } from './setting.ts';

/** Directions in lighter wind are not compared with a neighbour. [m/s] */
const COMPARED_M_PER_S = 2;

/** Watches one station: give it samples in order of time, ask it for findings at any moment. */
export class FaultWatch {
  readonly #reader: SeenReader;
  readonly #detectors: readonly Detector[];
  readonly #setting: FaultSetting;
  #neighbour: NeighbourWatch | null = null;

  /** @param setting - As `faultSetting` gives it. */
  constructor(setting: FaultSetting) {
    this.#reader = new SeenReader(setting.code);
    this.#detectors = detectorsFor(setting);
    this.#setting = setting;
  }

  /** One sample; one that is not later than the one before is passed over. [ms UTC] */
  add(sample: FaultSample): void {
    const seen = this.#reader.take(sample);
    if (!seen) return;
    for (const detector of this.#detectors) detector.add(seen);
    const isWindy = seen.speedMPerS === null || seen.speedMPerS >= COMPARED_M_PER_S;
    if (isWindy) this.#neighbour?.add(seen.atMs, seen.headingDeg);
  }

  /**
   * Many samples at once, with the same outcome as one by one.
   *
   * @param columns - [ms UTC], [deg], [m/s]
   * @check src/core/faults/readings/faultColumns.test.ts
   */
  addColumns(columns: FaultColumns): void {
    eachSample(columns, (sample) => this.add(sample));
  }

  /**
   * One direction of a station nearby, in order of time; it may run ahead of this station or behind it.
   *
   * @param name - Of that station; one at a time is compared with.
   * @param atMs - Instant. [ms UTC]
   * @param headingDeg - `null` = not read. [deg]
   */
  addNeighbour(name: string, atMs: number, headingDeg: number | null): void {
    this.#neighbour ??= new NeighbourWatch(name);
    this.#neighbour.addNeighbour(atMs, headingDeg);
  }

  /** Everything found so far, oldest first; what still lasts has no end. */
  findings(): readonly Finding[] {
    const found = [...this.#detectors, ...(this.#neighbour ? [this.#neighbour] : [])].flatMap((part) =>
      part.findings(),
    );
    const { code, windowLevel } = this.#setting;
    return explained(found, code, windowLevel).sort(
      (a, b) => a.sinceMs - b.sinceMs || a.kind.localeCompare(b.kind),
    );
  }
}

/**
 * Every fault that a stretch of one station's record shows.
 *
 * One pass, memory bounded by the disc and not by the record.
 *
 * @param samples - Of one station, in order of time; others are passed over. [ms UTC]
 * @param setting - As `faultSetting` gives it.
 * @returns Oldest first; empty for an empty record.
 * @check src/core/faults/faultYear.test.ts (faults put into a simulated year)
 */
export function findFaults(samples: Iterable<FaultSample>, setting: FaultSetting): readonly Finding[] {
  const watch = new FaultWatch(setting);
  for (const sample of samples) watch.add(sample);
  return watch.findings();
}
