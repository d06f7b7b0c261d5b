import { faultSetting } from '../core/faults/index.ts';
import type { AlertChannel, Clock, InstrumentFiles, SampleStore } from '../ports/index.ts';
import { AlertOutbox } from './alertOutbox.ts';
import { readDesign } from './design.ts';
import { FaultAlerts } from './faultAlerts.ts';

/** What watching takes. */
export interface WatchRun {
  readonly files: InstrumentFiles;
  /** Instrument file. */
  readonly path: string;
  readonly store: SampleStore;
  readonly clock: Clock;
  readonly channels: readonly AlertChannel[];
  /** Hears of channels that cannot be reached. */
  readonly onTrouble: (text: string) => void;
}

/** Faults of every station, told to every channel. */
export interface WatchedFaults {
  readonly faults: FaultAlerts;
  /** Ends once what is on its way has gone. */
  close(): Promise<void>;
}

/**
 * Begins to watch for faults, with what the store has of the last months.
 *
 * @throws the problems of the instrument file.
 */
export async function watchFaults(run: WatchRun): Promise<WatchedFaults> {
  const { instrument, head } = await readDesign(run.files, run.path);
  const faults = new FaultAlerts(faultSetting(instrument, head), () => run.clock.nowMs());
  await faults.learn(run.store);
  const outboxes = run.channels.map((channel) => new AlertOutbox(channel, run.clock, run.onTrouble));
  const end = faults.listen((alert) => outboxes.forEach((outbox) => outbox.put(alert)));
  return {
    faults,
    async close() {
      end();
      await Promise.all(outboxes.map((outbox) => outbox.close()));
    },
  };
}
