import type { PoolClient } from 'pg';
import { STORE_LOCK } from './migrations.ts';

/** Year and month of an instant, as a number that grows by one each month. [-] */
export function monthOf(atMs: number): number {
  const at = new Date(atMs);
  return at.getUTCFullYear() * 12 + at.getUTCMonth();
}

const startOf = (month: number): number => Date.UTC(Math.floor(month / 12), month % 12);

/** Makes the parts of a table that rows of these months go to. */
export class Partitions {
  readonly #table: 'sample' | 'message';
  readonly #made = new Set<number>();

  constructor(table: 'sample' | 'message') {
    this.#table = table;
  }

  async make(client: PoolClient, months: Iterable<number>): Promise<void> {
    for (const month of months) {
      if (this.#made.has(month)) continue;
      const year = String(Math.floor(month / 12)).padStart(4, '0');
      const name = `${this.#table}_${year}_${String((month % 12) + 1).padStart(2, '0')}`;
      await client.query('SELECT pg_advisory_xact_lock($1)', [STORE_LOCK]);
      // Both name and bounds come from a number, never from outside.
      await client.query(
        `CREATE TABLE IF NOT EXISTS ${name} PARTITION OF ${this.#table}
         FOR VALUES FROM (${startOf(month)}) TO (${startOf(month + 1)})`,
      );
      this.#made.add(month);
    }
  }

  /** Forgets what was made, as after a transaction that was undone. */
  forget(): void {
    this.#made.clear();
  }
}
