import { faultColumnsOf } from '../../core/faults/index.ts';
import {
  ledgerCounts,
  MOVED_LOG,
  movedRow,
  requireStorable,
  sifted,
  type Sample,
} from '../../core/record/index.ts';
import { READ_HEADING, READ_SPEED, type SampleColumns } from '../../core/wind/index.ts';
import type { SampleStore, SampleWindow, StoreProgress, StoredLedgerRow } from '../../ports/index.ts';

/** A store that forgets everything with the process: for tests, and for a look at an old log without keeping it. */
export function memorySampleStore(): SampleStore {
  const stations = new Map<string, Map<number, Sample>>();
  let ledger: StoredLedgerRow[] = [];
  const progress = new Map<string, StoreProgress>();

  const inWindow = ({ station, fromMs, untilMs }: SampleWindow): Sample[] =>
    [...(stations.get(station)?.values() ?? [])]
      .filter(({ atMs }) => atMs >= fromMs && atMs < untilMs)
      .sort((a, b) => a.atMs - b.atMs);

  return {
    progress: async (log) => progress.get(log) ?? null,
    async commit(batch) {
      requireStorable(batch.samples);
      if (batch.progress.seq <= (progress.get(batch.progress.log)?.seq ?? 0)) return;
      const { fresh, rows } = sifted(batch.samples, (station, atMs) => stations.get(station)?.get(atMs));
      for (const sample of fresh) {
        const ofStation = stations.get(sample.station) ?? new Map<number, Sample>();
        stations.set(sample.station, ofStation.set(sample.atMs, sample));
      }
      ledger.push(...[...batch.ledger, ...rows].map((row) => ({ ...row, log: batch.progress.log })));
      progress.set(batch.progress.log, batch.progress);
    },
    async stations() {
      return [...stations].map(([station, samples]) => {
        const times = [...samples.keys()].sort((a, b) => a - b);
        return { station, samples: times.length, firstMs: times[0]!, lastMs: times.at(-1)! };
      });
    },
    async *samples(window) {
      const found = inWindow(window);
      if (found.length > 0) yield found;
    },
    async *columns(window) {
      const found = inWindow(window);
      if (found.length > 0) yield columnsOf(found);
    },
    async *faultColumns(window) {
      const found = inWindow(window);
      if (found.length > 0) yield faultColumnsOf(found);
    },
    ledgerCounts: async () => ledgerCounts(ledger),
    async *ledger() {
      if (ledger.length > 0) yield ledger;
    },
    async moveOut(window, where) {
      const moved = inWindow(window);
      for (const { atMs } of moved) stations.get(window.station)!.delete(atMs);
      ledger.push({ ...movedRow(window.station, moved.length, where), log: MOVED_LOG });
    },
    async clear() {
      stations.clear();
      progress.clear();
      ledger = [];
    },
    close: async () => {},
  };
}

/** Samples side by side. */
function columnsOf(samples: readonly Sample[]): SampleColumns {
  return {
    atMs: Float64Array.from(samples, ({ atMs }) => atMs),
    headingDeg: Float64Array.from(samples, ({ headingDeg }) => headingDeg ?? 0),
    speedMPerS: Float64Array.from(samples, ({ speedMPerS }) => speedMPerS ?? 0),
    read: Uint8Array.from(
      samples,
      ({ headingDeg, speedMPerS }) =>
        (headingDeg === null ? 0 : READ_HEADING) | (speedMPerS === null ? 0 : READ_SPEED),
    ),
  };
}
