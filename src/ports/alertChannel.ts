import type { Finding } from '../core/faults/index.ts';

/** One fault that has come up, or is over. */
export interface Alert {
  readonly state: 'raised' | 'cleared';
  readonly station: string;
  /** The same for raising and clearing: kind, channel and position. */
  readonly fault: string;
  /** Sample that made it known. [ms UTC] */
  readonly atMs: number;
  readonly finding: Finding;
}

/**
 * Where alerts go.
 *
 * Promises: `send` ends once the other side has taken the alert, and throws when it has not; nothing secret is in `name`.
 */
export interface AlertChannel {
  /** What it is, for the maker's eyes. */
  readonly name: string;
  send(alert: Alert): Promise<void>;
  close(): Promise<void>;
}
