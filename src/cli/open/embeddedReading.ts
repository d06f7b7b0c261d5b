import { VanewrightError } from '../../core/error/index.ts';
import type { RecordReading } from '../../ports/index.ts';

/** A store that can be let go of. */
export type Closable = RecordReading & { close(): Promise<void> };

/** Ways to a store in a file. */
export interface EmbeddedWays {
  /** Where the process that holds the store can be asked; `null` when none does. */
  logger(): Promise<RecordReading | null>;
  /** Opens the file; `null` when there is none yet. @throws `store/in-use` */
  open(): Promise<Closable | null>;
}

/** Unused for this long, the file is let go of, so that a logger can have it. [ms] */
const LET_GO_MS = 1000;
/** A logger that has just taken the file says soon where it can be asked. [ms] */
const AGAIN_MS = 300;
const AGAIN_MOST = 10;

const nothing: RecordReading = {
  stations: async () => [],
  ledgerCounts: async () => [],
  async *samples() {},
  async *columns() {},
  async *faultColumns() {},
};

/** Something to read from, held until it is given back. */
interface Lease {
  readonly reading: RecordReading;
  giveBack(): void;
}

/**
 * Reads a store that one process at a time may open: through the logger while one runs, else by opening the file for a
 * moment, so that a logger can start at any time.
 */
export class EmbeddedReading implements RecordReading {
  readonly #ways: EmbeddedWays;
  #opened: Promise<Closable | null> | null = null;
  #users = 0;
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(ways: EmbeddedWays) {
    this.#ways = ways;
  }

  async #lease(again = AGAIN_MOST): Promise<Lease> {
    const logger = this.#users > 0 ? null : await this.#ways.logger();
    if (logger) return { reading: logger, giveBack: () => {} };
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    this.#users++;
    this.#opened ??= this.#ways.open();
    try {
      return { reading: (await this.#opened) ?? nothing, giveBack: () => this.#giveBack() };
    } catch (error) {
      this.#users--;
      this.#opened = null;
      const isHeld = error instanceof VanewrightError && error.problems[0]!.code === 'store/in-use';
      if (!isHeld || again === 0) throw error;
      await new Promise((done) => setTimeout(done, AGAIN_MS));
      return this.#lease(again - 1);
    }
  }

  #giveBack(): void {
    if (--this.#users > 0) return;
    this.#timer = setTimeout(() => void this.close(), LET_GO_MS);
  }

  /** Lets go of the file. */
  async close(): Promise<void> {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    const opened = this.#opened;
    this.#opened = null;
    await (await opened?.catch(() => null))?.close();
  }

  async #once<T>(work: (reading: RecordReading) => Promise<T>): Promise<T> {
    const { reading, giveBack } = await this.#lease();
    try {
      return await work(reading);
    } finally {
      giveBack();
    }
  }

  async *#through<T>(work: (reading: RecordReading) => AsyncIterable<T>): AsyncIterable<T> {
    const { reading, giveBack } = await this.#lease();
    try {
      yield* work(reading);
    } finally {
      giveBack();
    }
  }

  stations() {
    return this.#once((reading) => reading.stations());
  }

  ledgerCounts() {
    return this.#once((reading) => reading.ledgerCounts());
  }

  samples(window: Parameters<RecordReading['samples']>[0]) {
    return this.#through((reading) => reading.samples(window));
  }

  columns(window: Parameters<RecordReading['columns']>[0]) {
    return this.#through((reading) => reading.columns(window));
  }

  faultColumns(window: Parameters<RecordReading['faultColumns']>[0]) {
    return this.#through((reading) => reading.faultColumns(window));
  }
}
