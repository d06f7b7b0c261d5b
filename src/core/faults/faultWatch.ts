import type { Detector } from './detector.ts';
import type { Finding } from './finding.ts';
import { detectorsFor } from './detectorsFor.ts';
import { SeenReader, type FaultSample } from './readings/seen.ts';
import type { FaultSetting } from './setting.ts';

/** Watches one station: give it samples in order of time, ask it for findings at any moment. */
export class FaultWatch {
  readonly #reader: SeenReader;
  readonly #detectors: readonly Detector[];

  /** @param setting - As `faultSetting` gives it. */
  constructor(setting: FaultSetting) {
    this.#reader = new SeenReader(setting.code);
    this.#detectors = detectorsFor(setting);
  }

  /** One sample; one that is not later than the one before is passed over. [ms UTC] */
  add(sample: FaultSample): void {
    const seen = this.#reader.take(sample);
    if (!seen) return;
    for (const detector of this.#detectors) detector.add(seen);
  }

  /** Everything found so far, oldest first; what still lasts has no end. */
  findings(): readonly Finding[] {
    return this.#detectors
      .flatMap((detector) => detector.findings())
      .sort((a, b) => a.sinceMs - b.sinceMs || a.kind.localeCompare(b.kind));
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
