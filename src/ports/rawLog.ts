import type { Damage, NewRawEntry, RawEntry } from '../core/record/index.ts';

/** A stretch of the log that could not be read when it was opened. */
export interface RawDamage extends Damage {
  /** Name of the segment. */
  readonly segment: string;
}

/**
 * Where raw bytes rest, append only. Every adapter passes test/contracts/rawLog.ts.
 *
 * Promises: `append` ends only once the entries are on the disk, and gives their sequence numbers; what it has
 * given is never lost, whatever kills the process; entries of one call stay together and in order; a log whose last
 * bytes are torn, zeroed or garbage opens with every entry before them; entries are never changed.
 */
export interface RawLog {
  /** Its own name, the same each time it is opened, and like that of no other. */
  readonly name: string;
  /** Damage found on opening and on reading so far; bytes that cannot be read stay where they are. */
  readonly damage: readonly RawDamage[];
  /** Sequence number of the last entry; 0 when empty. [-] */
  readonly lastSeq: number;
  /**
   * @param entries - In order; `stream` 0 in a `begin` entry stands for its own sequence number.
   * @returns Sequence number of the first of them. [-]
   * @throws `log/disk-full` or `log/not-writable`; none of the entries is in the log then, and a later try may succeed.
   */
  append(entries: readonly NewRawEntry[]): Promise<number>;
  /** Entries after `afterSeq`, oldest first, a batch at a time; those appended meanwhile may be among them. */
  read(afterSeq: number): AsyncIterable<readonly RawEntry[]>;
  close(): Promise<void>;
}
